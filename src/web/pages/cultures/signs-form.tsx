import { type ReactNode, useState } from "react";
import { recordSigns } from "../../../../shared/api/signs.ts";
import type { SignName } from "../../../../shared/culture-words.ts";
import { DraftNotice } from "../../parts/draft-notice.tsx";
import { FieldScope, faultsOf } from "../../parts/form/faults.ts";
import { RecordForm } from "../../parts/form/record-form.tsx";
import { TextField } from "../../parts/form/text-field.tsx";
import { useSession } from "../../parts/session.tsx";
import { useDraft } from "../../parts/use-draft.ts";
import { useRecording } from "../../parts/use-recording.ts";
import { culturesText } from "../../texts/cultures.ts";
import { SignFields } from "./sign-fields.tsx";
import { adultSigns, bloodSigns, infantSigns, noSign, type SignsDraft, saidSigns, signsInput } from "./signs-draft.ts";

/** Records what somebody found who looked for signs on a day. What nobody looked for is left, and is never absent. */
export function SignsForm({ patientId, again }: { patientId: number; again: () => void }): ReactNode {
  const { me, time, now } = useSession();
  const [began] = useState<SignsDraft>(() => ({ day: time.dayOf(now()), signs: {} }));
  const { draft, change, clear, wasKept } = useDraft(`signs-${patientId}`, began, me.personId);
  const [done, setDone] = useState<number | null>(null);
  const { sending, send } = useRecording(recordSigns);
  const record = async (confirm: readonly string[] = []): Promise<void> => {
    setDone(null);
    const reply = await send({ patientId, ...signsInput(draft), confirm: [...confirm] });
    if (reply.state !== "answered") return;
    setDone(reply.value.signIds.length);
    change({ ...began, day: draft.day });
    clear();
    again();
  };
  return (
    <FieldScope value="signs">
      <div role="status">
        {done !== null && <p className="notice done">{culturesText("signsDone", { count: done })}</p>}
      </div>
      {wasKept && <DraftNotice drop={() => change(began)} />}
      <RecordForm
        {...{ sending }}
        record={() => record()}
        confirm={(pointers) => void record(pointers)}
        button={culturesText("signsRecord")}
        isReady={saidSigns(draft).length > 0}
      >
        <TextField
          pointer="/day"
          label={culturesText("day")}
          help={culturesText("dayHelp")}
          faults={faultsOf(sending)}
          type="date"
          max={time.dayOf(now())}
          value={draft.day}
          change={(day) => change({ day })}
        />
        <p className="help">{culturesText("notLooked")}</p>
        <EachSign {...{ draft, change }} names={adultSigns} faults={faultsOf(sending)} />
        <details>
          <summary>{culturesText("infantSigns")}</summary>
          <EachSign {...{ draft, change }} names={infantSigns} faults={faultsOf(sending)} />
        </details>
        <details>
          <summary>{culturesText("bloodSigns")}</summary>
          <EachSign {...{ draft, change }} names={bloodSigns} faults={faultsOf(sending)} />
        </details>
        <p className="small">{culturesText("signSource")}</p>
      </RecordForm>
    </FieldScope>
  );
}

function EachSign(props: {
  names: readonly SignName[];
  draft: SignsDraft;
  change: (part: Partial<SignsDraft>) => void;
  faults: ReturnType<typeof faultsOf>;
}): ReactNode {
  const { names, draft, change, faults } = props;
  const said = saidSigns(draft);
  return names.map((sign) => {
    const own = draft.signs[sign] ?? noSign;
    return (
      <SignFields
        key={sign}
        {...{ sign, faults }}
        // Signs that are not sent have no place in the list; their fields have no faults.
        at={`/signs/${said.includes(sign) ? said.indexOf(sign) : sign}`}
        draft={own}
        change={(part) => change({ signs: { ...draft.signs, [sign]: { ...own, ...part } } })}
        isOptional
      />
    );
  });
}
