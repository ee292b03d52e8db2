import { type ReactNode, useState } from "react";
import { recordSigns } from "../../../../shared/api/signs.ts";
import { type SignName, signName } from "../../../../shared/culture-words.ts";
import { FieldScope, faultsOf } from "../../parts/form/faults.ts";
import { RecordForm } from "../../parts/form/record-form.tsx";
import { TextField } from "../../parts/form/text-field.tsx";
import { TimeField } from "../../parts/form/time-field.tsx";
import { useSession } from "../../parts/session.tsx";
import { useRecording } from "../../parts/use-recording.ts";
import { signText } from "../../texts/culture-words.ts";
import { culturesText } from "../../texts/cultures.ts";
import { reviewsText as text } from "../../texts/reviews.ts";
import type { Cultures } from "./culture-rows.ts";
import { type ReviewDraft, reviewInput, signsWithoutEntry, windowsOf } from "./review-draft.ts";

interface ReviewProps {
  readonly patientId: number;
  readonly cultures: Cultures;
  readonly again: () => void;
}

/** Records that a chart was read for some days and does not document some signs: one entry for all of them. */
export function ReviewForm({ patientId, cultures, again }: ReviewProps): ReactNode {
  const { time, now } = useSession();
  const today = time.dayOf(now());
  const draftOf = (days: { first: string; last: string }): ReviewDraft => ({
    ...{ first: days.first, last: days.last, readAt: time.charted(now()) },
    // A sign is said to be undocumented by the person who looked for it, never by the form.
    signs: [],
  });
  const windows = windowsOf(cultures, time, today);
  const [draft, setDraft] = useState(() => draftOf(windows[0] ?? { first: today, last: today }));
  const [done, setDone] = useState<number | null>(null);
  const { sending, send } = useRecording(recordSigns);
  const record = async (): Promise<void> => {
    setDone(null);
    const reply = await send({ patientId, ...reviewInput(draft) });
    if (reply.state !== "answered") return;
    setDone(reply.value.signIds.length);
    again();
  };
  const faults = faultsOf(sending);
  const change = (part: Partial<ReviewDraft>) => setDraft({ ...draft, ...part });
  return (
    <FieldScope value="review">
      <div role="status">{done !== null && <p className="notice done">{text("done", { count: done })}</p>}</div>
      <p className="help">{text("lead")}</p>
      {windows.length > 0 && <p>{text("windows")}</p>}
      <p className="row">
        {windows.slice(0, 4).map((one) => (
          <button key={one.specimenId} type="button" onClick={() => setDraft(draftOf(one))}>
            {text("window", { when: one.collected })}
          </button>
        ))}
      </p>
      <RecordForm {...{ sending, record }} button={text("recordIt")} isReady={draft.signs.length > 0}>
        <DayField {...{ faults }} pointer="/day" value={draft.first} change={(first) => change({ first })} />
        <DayField {...{ faults }} pointer="/lastDay" value={draft.last} change={(last) => change({ last })} />
        <TimeField
          {...{ faults, pointer: "/readAt", label: text("readAt"), help: text("readAtHelp"), value: draft.readAt }}
          change={(readAt) => change({ readAt })}
        />
        <SignChecks
          value={draft.signs}
          change={(signs) => change({ signs })}
          withoutEntry={signsWithoutEntry(cultures.signs, draft)}
        />
      </RecordForm>
    </FieldScope>
  );
}

function DayField(props: {
  pointer: "/day" | "/lastDay";
  value: string;
  change: (value: string) => void;
  faults: ReturnType<typeof faultsOf>;
}): ReactNode {
  const { time, now } = useSession();
  const label = text(props.pointer === "/day" ? "first" : "last");
  return <TextField {...props} {...{ label }} type="date" max={time.dayOf(now())} />;
}

function SignChecks(props: {
  value: readonly SignName[];
  change: (value: readonly SignName[]) => void;
  withoutEntry: readonly SignName[];
}): ReactNode {
  const { value, change, withoutEntry } = props;
  return (
    <fieldset>
      <legend>{text("which")}</legend>
      <p className="help">{text("whichHelp")}</p>
      <button type="button" onClick={() => change(withoutEntry)}>
        {text("checkAll")}
      </button>
      {signName.options.map((sign) => (
        <label key={sign} className="choice">
          <input
            type="checkbox"
            checked={value.includes(sign)}
            onChange={({ target }) =>
              change(signName.options.filter((one) => (one === sign ? target.checked : value.includes(one))))
            }
          />
          <span>{sign === "temperature" ? culturesText("temperature") : signText(sign)}</span>
        </label>
      ))}
    </fieldset>
  );
}
