import type { ReactNode } from "react";
import { FieldScope } from "../../parts/form/faults.ts";
import { ProblemNotice } from "../../parts/form/problem-notice.tsx";
import { StaleChoice } from "../../parts/form/stale-choice.tsx";
import type { Sending } from "../../parts/use-recording.ts";
import { styleText } from "../../texts/style.ts";
import { refusal } from "./style-faults.ts";

const nothing = () => undefined;
const sendings: readonly Sending<unknown>[] = [
  { state: "refused", problem: refusal("field-unreadable", "/text", "/time") },
  { state: "refused", problem: refusal("unusual-value", "/text") },
  { state: "unreachable" },
];

/** Why something was not recorded: faults at fields, a value to confirm, a lost connection, and a stale version. */
export function StyleProblems(): ReactNode {
  return (
    <section aria-labelledby="problems">
      <h2 id="problems">{styleText("problems")}</h2>
      <FieldScope value="style-plain">
        {sendings.map((sending) => (
          <ProblemNotice key={JSON.stringify(sending)} sending={sending} sendAgain={nothing} confirm={nothing} />
        ))}
      </FieldScope>
      <h3>{styleText("stale")}</h3>
      <StaleChoice
        differences={[{ label: styleText("staleLabel"), mine: "09:30", theirs: "09:45" }]}
        useMine={nothing}
        useTheirs={nothing}
      />
    </section>
  );
}
