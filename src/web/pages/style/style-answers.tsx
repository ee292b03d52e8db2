import type { ReactNode } from "react";
import { ShowAnswer } from "../../parts/show-answer.tsx";
import type { Asked } from "../../parts/use-answer.ts";
import { styleText } from "../../texts/style.ts";
import { refusal } from "./style-faults.ts";

const again = () => undefined;

/** What stands where an answer is asked for: while it is awaited, refused, unreachable, and when it is an old one. */
const answers = [
  ["waiting", { state: "waiting", again }],
  ["refused", { state: "refused", problem: refusal("not-permitted"), again }],
  ["broken", { state: "refused", problem: refusal("internal-error"), again }],
  ["unreachable", { state: "unreachable", again }],
  ["old", { state: "answered", value: null, isOld: true, again }],
] as const satisfies readonly (readonly [string, Asked<null> & { readonly isOld?: boolean }])[];

/** Each state of an answer. */
export function StyleAnswers(): ReactNode {
  return (
    <section aria-labelledby="answers">
      <h2 id="answers">{styleText("answers")}</h2>
      {answers.map(([name, asked]) => (
        <div key={name} data-sample="">
          <h3>{styleText("state", { name: styleText(name) })}</h3>
          <ShowAnswer asked={asked} what={styleText("answerWhat")}>
            {() => <p>{styleText("answer")}</p>}
          </ShowAnswer>
        </div>
      ))}
    </section>
  );
}
