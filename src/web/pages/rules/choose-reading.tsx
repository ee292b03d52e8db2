import { type ReactNode, useState } from "react";
import { chooseReading } from "../../../../shared/api/editions.ts";
import type { EditionId } from "../../../../shared/edition-words.ts";
import { monthTyped } from "../../parts/form/as-typed.ts";
import { SelectField } from "../../parts/form/choice-field.tsx";
import { faultsOf } from "../../parts/form/faults.ts";
import { RecordForm } from "../../parts/form/record-form.tsx";
import { TextField } from "../../parts/form/text-field.tsx";
import { useRecording } from "../../parts/use-recording.ts";
import { rulesText } from "../../texts/rules.ts";
import type { Readings } from "./chosen-readings.tsx";

/** Chooses a reading of an open point from a month to come, with the reason. */
export function ChooseReading(props: {
  editionId: EditionId;
  points: Readings["points"];
  done: () => void;
}): ReactNode {
  const { editionId, points, done } = props;
  const [draft, setDraft] = useState({ option: "", at: "", fromMonth: "", reason: "" });
  const change = (part: Partial<typeof draft>): void => setDraft({ ...draft, ...part });
  const { sending, send } = useRecording(chooseReading);
  const faults = faultsOf(sending);
  const readings = points.find(({ option }) => option === draft.option)?.readings ?? [];
  const record = async (): Promise<void> => {
    const { option, fromMonth, reason } = draft;
    const value = readings[Number(draft.at)]?.value ?? "";
    const reply = await send({ editionId, option, value, fromMonth: monthTyped(fromMonth), reason });
    if (reply.state === "answered") done();
  };
  return (
    <>
      <h3 id="choose-reading">{rulesText("choose")}</h3>
      <RecordForm {...{ sending, record }} button={rulesText("choose")} labelledBy="choose-reading">
        <SelectField
          pointer="/option"
          label={rulesText("point")}
          faults={faults}
          choices={points.map(({ option, point }) => ({ value: option, label: point }))}
          value={draft.option === "" ? null : draft.option}
          change={(option) => change({ option: option ?? "", at: "" })}
          empty={rulesText("choosePoint")}
        />
        <SelectField
          pointer="/value"
          label={rulesText("newReading")}
          faults={faults}
          choices={readings.map(({ words }, at) => ({ value: String(at), label: words }))}
          value={draft.at === "" ? null : draft.at}
          change={(at) => change({ at: at ?? "" })}
          empty={rulesText("chooseNewReading")}
        />
        {(["fromMonth", "reason"] as const).map((name) => (
          <TextField
            key={name}
            pointer={`/${name}`}
            label={rulesText(name)}
            faults={faults}
            {...(name === "fromMonth" ? { type: "month" as const, help: rulesText("fromMonthHelp") } : {})}
            value={draft[name]}
            change={(value) => change({ [name]: value })}
          />
        ))}
      </RecordForm>
    </>
  );
}
