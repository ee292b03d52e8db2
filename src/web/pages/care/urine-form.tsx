import { type ReactNode, useState } from "react";
import { recordUrineOutput } from "../../../../shared/api/notes.ts";
import { faultsOf } from "../../parts/form/faults.ts";
import { RecordForm } from "../../parts/form/record-form.tsx";
import { TextField } from "../../parts/form/text-field.tsx";
import { useSession } from "../../parts/session.tsx";
import { useDraft } from "../../parts/use-draft.ts";
import { useRecording } from "../../parts/use-recording.ts";
import { careText } from "../../texts/care.ts";
import { insertionText } from "../../texts/insertion.ts";

/** The amount of urine of now. */
export function UrineForm({ catheterId }: { catheterId: number }): ReactNode {
  const { me, now } = useSession();
  const { draft, change, clear } = useDraft(`urine-${catheterId}`, { amount: "" }, me.personId);
  const [done, setDone] = useState<string | null>(null);
  const { sending, send } = useRecording(recordUrineOutput);
  const record = async (confirm: readonly string[] = []): Promise<void> => {
    setDone(null);
    const amountMl = Number(draft.amount.replace(",", "."));
    const at = new Date(now()).toISOString();
    const reply = await send({ catheterId, at, amountMl, confirm: [...confirm] });
    if (reply.state !== "answered") return;
    setDone(draft.amount);
    change({ amount: "" });
    clear();
  };
  return (
    <section aria-labelledby="urine">
      <h2 id="urine">{careText("urineTitle")}</h2>
      <RecordForm
        {...{ sending }}
        record={() => record()}
        confirm={(ones) => void record(ones)}
        button={careText("urineRecord")}
        isReady={draft.amount.trim() !== ""}
        isSmall
      >
        <TextField
          pointer="/amountMl"
          label={careText("urineAmount")}
          faults={faultsOf(sending)}
          inputMode="decimal"
          unit={insertionText("unitMl")}
          value={draft.amount}
          change={(amount) => change({ amount })}
        />
      </RecordForm>
      <div role="status">
        {done !== null && <p className="notice done">{careText("urineDone", { amount: done })}</p>}
      </div>
    </section>
  );
}
