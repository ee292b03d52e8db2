import { type ReactNode, useState } from "react";
import { applyLaboratoryWord } from "../../../../shared/api/laboratory-words.ts";
import { ProblemNotice } from "../../parts/form/problem-notice.tsx";
import { useRecording } from "../../parts/use-recording.ts";
import { wordsText } from "../../texts/laboratory-words.ts";
import type { Word } from "./word-form.tsx";

/** Applies a choice to past specimens, some patients a call. The service keeps how far it is, and goes on from there. */
export function ApplyWord({ word, done }: { word: Word; done: (words: string) => void }): ReactNode {
  const { column, wording, specimens } = word;
  const { sending, send } = useRecording(applyLaboratoryWord);
  const [past, setPast] = useState(word.past);
  const apply = async (): Promise<void> => {
    for (let changed = 0; ; ) {
      const reply = await send({ column, wording });
      if (reply.state !== "answered") return;
      changed += reply.value.changed;
      setPast(reply.value.past);
      if (reply.value.past === null) return done(wordsText("applied", { changed }));
    }
  };
  return (
    <>
      <ProblemNotice sending={sending} sendAgain={() => void apply()} />
      <p className="small">{wordsText("applyHelp", { count: specimens })}</p>
      <div role="status">{past !== null && <p>{wordsText("applying", past)}</p>}</div>
      <button type="button" disabled={sending.state === "sending"} onClick={() => void apply()}>
        {wordsText(past === null ? "apply" : "applyOn")}{" "}
        <span className="unseen">{wordsText("applyOf", { wording })}</span>
      </button>
    </>
  );
}
