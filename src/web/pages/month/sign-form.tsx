import { type ReactNode, useState } from "react";
import { readMonthDocument } from "../../../../shared/api/month-document.ts";
import { signMonth } from "../../../../shared/api/month-figures.ts";
import type { Month } from "../../../../shared/day.ts";
import { faultsOf } from "../../parts/form/faults.ts";
import { RecordForm } from "../../parts/form/record-form.tsx";
import { LongTextField } from "../../parts/form/text-field.tsx";
import { askForFile } from "../../parts/server.ts";
import { useRecording } from "../../parts/use-recording.ts";
import { monthWords } from "../../parts/words.ts";
import { signingText as text } from "../../texts/signing.ts";

/** Signs the figures on the page; anew with a reason where somebody signed before. */
export function SignForm(props: {
  month: Month;
  seen: string;
  /** The latest signature that the page shows; 0 for none. */
  latest: number;
  readAgain: () => void;
  done: () => void;
}): ReactNode {
  const { month, seen, latest, readAgain, done } = props;
  const [reason, setReason] = useState("");
  const { sending, send, forget } = useRecording(signMonth);
  const sign = async (): Promise<void> => {
    const reply = await send({ month, seen, replaces: latest, reason: reason.trim() === "" ? null : reason });
    if (reply.state !== "answered") return;
    done();
    // Its PDF is made and kept now; where that does not succeed, whoever takes it along first has it made.
    void askForFile(readMonthDocument, { month, signature: reply.value.signature.number }, "application/pdf");
  };
  const again = (): void => {
    forget();
    readAgain();
    done();
  };
  const words = { month: monthWords(month) };
  return (
    <div className="on-screen">
      <p>{text("says")}</p>
      <RecordForm sending={sending} record={sign} button={latest === 0 ? text("sign", words) : text("signAnew", words)}>
        {sending.state === "refused" && (
          <button type="button" onClick={again}>
            {text("readAgain")}
          </button>
        )}
        {latest > 0 && (
          <LongTextField
            pointer="/reason"
            label={text("reason")}
            help={text("reasonHelp")}
            faults={faultsOf(sending)}
            value={reason}
            change={setReason}
            maxLength={500}
          />
        )}
      </RecordForm>
    </div>
  );
}
