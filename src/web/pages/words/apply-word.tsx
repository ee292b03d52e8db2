import { type ReactNode, useState } from "react";
import { applyLaboratoryWord } from "../../../../shared/api/laboratory-words.ts";
import { ProblemNotice } from "../../parts/form/problem-notice.tsx";
import { useRecording } from "../../parts/use-recording.ts";
import { wordsText } from "../../texts/laboratory-words.ts";
import type { Word } from "./word-form.tsx";

/** Applies a choice to past specimens, some patients a call. Broken off, it can be begun again. */
export function ApplyWord({ word, done }: { word: Word; done: (words: string) => void }): ReactNode {
  const { column, wording, specimens } = word;
  const { sending, send } = useRecording(applyLaboratoryWord);
  const [patients, setPatients] = useState<number | null>(null);
  const apply = async (): Promise<void> => {
    let after: number | null = 0;
    let [changed, seen] = [0, 0];
    while (after !== null) {
      const reply: Awaited<ReturnType<typeof send>> = await send({ column, wording, after });
      if (reply.state !== "answered") return;
      after = reply.value.after;
      changed += reply.value.changed;
      seen += reply.value.patients;
      setPatients(seen);
    }
    done(wordsText("applied", { changed }));
  };
  return (
    <>
      <ProblemNotice sending={sending} sendAgain={() => void apply()} />
      <p className="small">{wordsText("applyHelp", { count: specimens })}</p>
      <button type="button" disabled={sending.state === "sending"} onClick={() => void apply()}>
        {wordsText("apply")} <span className="unseen">{wordsText("applyOf", { wording })}</span>
      </button>
      <div role="status">{patients !== null && <p className="small">{wordsText("applying", { patients })}</p>}</div>
    </>
  );
}
