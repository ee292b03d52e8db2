import type { ReactNode } from "react";
import { ChoiceField } from "../../parts/form/choice-field.tsx";
import { type FieldFault, FieldScope } from "../../parts/form/faults.ts";
import { Said } from "../../parts/said.tsx";
import { wardQuestionText as text } from "../../texts/ward-questions.ts";
import type { ImportTold } from "./import-page.tsx";

type Questions = ImportTold["wardQuestions"];

/** What the person chose for each code: the code of a unit, or a new unit. */
export type WardAnswers = Readonly<Record<string, string>>;

/** A new unit, as a choice: no code of a unit is empty. */
const newUnit = "";

/** The answers as they are sent. A code without one is left out, so that the server names it. */
export function answersSaid(questions: Questions, answers: WardAnswers) {
  return questions.flatMap(({ code }) => {
    const answer = answers[code];
    return answer === undefined ? [] : [{ code, sameAs: answer === newUnit ? null : answer }];
  });
}

/** For each code that no unit has and that is similar to a unit's: a new unit, or the same one. */
export function WardQuestions(props: {
  questions: Questions;
  faults: readonly FieldFault[];
  answers: WardAnswers;
  change: (code: string, answer: string) => void;
}): ReactNode {
  const { questions, faults, answers, change } = props;
  if (questions.length === 0) return null;
  return (
    <section aria-labelledby="ward-questions">
      <h3 id="ward-questions">{text("title")}</h3>
      <p>{text("lead")}</p>
      {questions.map(({ code, near }) => (
        <FieldScope key={code} value={`ward-${code}`}>
          <ChoiceField
            pointer="/wards"
            label={<Said>{text("question", { code })}</Said>}
            faults={answers[code] === undefined ? faults : []}
            choices={[
              ...near.map((ward) => ({
                value: ward.code,
                label: <Said>{text("same", { ward: unitWords(ward) })}</Said>,
              })),
              { value: newUnit, label: text("newUnit") },
            ]}
            value={answers[code] ?? null}
            change={(answer) => change(code, answer)}
            isTall
          />
        </FieldScope>
      ))}
    </section>
  );
}

function unitWords({ code, name }: Questions[number]["near"][number]): string {
  return code === name ? code : `${code} ${name}`;
}
