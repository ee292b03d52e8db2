import type { ReactNode } from "react";
import { type SignFinding, type SignName, signFinding, temperatureUnit } from "../../../../shared/culture-words.ts";
import { ChoiceField } from "../../parts/form/choice-field.tsx";
import type { FieldFault } from "../../parts/form/faults.ts";
import { TextField } from "../../parts/form/text-field.tsx";
import { findingText, signText } from "../../texts/culture-words.ts";
import { culturesText } from "../../texts/cultures.ts";
import { signHelpText } from "../../texts/sign-help.ts";
import { type SignDraft, withoutCause } from "./signs-draft.ts";

interface SignFieldsProps {
  readonly sign: SignName;
  readonly draft: SignDraft;
  readonly change: (part: Partial<SignDraft>) => void;
  /** The pointer of the sign in what is sent: `/signs/0`, or nothing where it is the whole. */
  readonly at: string;
  readonly faults: readonly FieldFault[];
  /** Whether a sign may stay at “not looked for”. */
  readonly isOptional: boolean;
}

/** One sign: found, not found, or nobody looked; a temperature is measured. */
export function SignFields({ sign, draft, change, at, faults, isOptional }: SignFieldsProps): ReactNode {
  const isMeasured = sign === "temperature";
  const findings = signFinding.options.filter((one) => isOffered(one, { isMeasured, isOptional }));
  const choices = [
    ...findings.map((value) => ({
      value: value as string,
      label: isMeasured && value === "present" ? culturesText("temperature") : findingText(value),
    })),
    ...(isOptional ? [{ value: "none", label: culturesText("leave") }] : []),
  ];
  const own = faults.filter(({ pointer }) => pointer === at || pointer === `${at}/finding` || pointer === `${at}/sign`);
  return (
    <div className="sign">
      <ChoiceField
        pointer={`${at}/finding`}
        label={signText(sign)}
        help={signHelpText(sign)}
        faults={own.map((fault) => ({ ...fault, pointer: `${at}/finding` }))}
        choices={choices}
        value={draft.finding ?? "none"}
        change={(one) => change({ finding: signFinding.options.find((known) => known === one) ?? null })}
      />
      {draft.finding === "present" && <Found {...{ sign, draft, change, at, faults }} />}
    </div>
  );
}

/** A new entry says what was found; a chart review has a form of its own, and a temperature is there or not. */
function isOffered(
  one: SignFinding,
  { isMeasured, isOptional }: { isMeasured: boolean; isOptional: boolean },
): boolean {
  if (isOptional && (one === "not-documented" || one === "not-recorded")) return false;
  return !isMeasured || one !== "absent";
}

function Found({ sign, draft, change, at, faults }: Omit<SignFieldsProps, "isOptional">): ReactNode {
  return (
    <div className="sign-more">
      {sign === "temperature" && (
        <>
          <TextField
            pointer={`${at}/temperature`}
            label={culturesText("temperature")}
            help={culturesText("temperatureHelp")}
            faults={faults}
            inputMode="decimal"
            maxLength={20}
            value={draft.temperature}
            change={(temperature) => change({ temperature })}
          />
          <ChoiceField
            pointer={`${at}/unit`}
            label={culturesText("unit")}
            faults={faults}
            choices={temperatureUnit.options.map((value) => ({ value, label: culturesText(`unit${value}`) }))}
            value={draft.unit}
            change={(unit) => change({ unit })}
          />
        </>
      )}
      <TextField
        pointer={`${at}/time`}
        label={culturesText("time")}
        help={culturesText("timeHelp")}
        faults={faults}
        type="time"
        value={draft.time}
        change={(time) => change({ time })}
      />
      {(!withoutCause.includes(sign) || draft.otherCause) && (
        <label className="choice">
          <input
            type="checkbox"
            checked={draft.otherCause}
            onChange={(event) => change({ otherCause: event.target.checked })}
          />
          <span>{culturesText("otherCause")}</span>
        </label>
      )}
    </div>
  );
}
