import { type ReactNode, useState } from "react";
import { decideImport } from "../../../../shared/api/imports.ts";
import { faultsOf } from "../../parts/form/faults.ts";
import { ProblemNotice } from "../../parts/form/problem-notice.tsx";
import { useRecording } from "../../parts/use-recording.ts";
import { importText } from "../../texts/imports.ts";
import type { ImportTold } from "./import-page.tsx";
import { answersSaid, type WardAnswers, WardQuestions } from "./ward-questions.tsx";

type Decision = "apply" | "discard";

/** Stores what was tried, with or without its refused lines, or discards it. */
export function Decide({ told, decided }: { told: ImportTold; decided: () => void }): ReactNode {
  const { importId, counts, broken } = told;
  const [answers, setAnswers] = useState<WardAnswers>({});
  const [last, setLast] = useState<Decision>("apply");
  const { sending, send } = useRecording(decideImport);
  const decide = async (decision: Decision): Promise<void> => {
    setLast(decision);
    const wards = answersSaid(told.wardQuestions, answers);
    const reply = await send({ importId, decision, setAside: counts.refused > 0, wards });
    if (reply.state === "answered") decided();
  };
  const isSending = sending.state === "sending";
  return (
    <section aria-labelledby="decide" className="on-screen">
      <h2 id="decide">{importText("decideTitle")}</h2>
      <ProblemNotice sending={sending} sendAgain={() => void decide(last)} />
      <p>{situation(told)}</p>
      <WardQuestions
        questions={told.wardQuestions}
        faults={faultsOf(sending)}
        answers={answers}
        change={(code, answer) => setAnswers((before) => ({ ...before, [code]: answer }))}
      />
      {counts.refused > 0 && !broken && <p className="small">{importText("setAsideHelp")}</p>}
      <p className="row">
        {!broken && (
          <button type="button" className="first" disabled={isSending} onClick={() => void decide("apply")}>
            {importText(counts.refused > 0 ? "applySetAside" : "apply")}
          </button>
        )}
        <button type="button" disabled={isSending} onClick={() => void decide("discard")}>
          {importText("discard")}
        </button>
      </p>
    </section>
  );
}

function situation({ counts, broken }: ImportTold): string {
  const { waiting, refused } = counts;
  if (broken) return importText("broken");
  if (refused > 0) return importText("faulty", { count: refused });
  return waiting === 0 ? importText("nothingNew") : importText("clean", { count: waiting });
}
