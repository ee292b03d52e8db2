import type { ReactNode } from "react";
import type { PolicyBody } from "../../../../shared/policy.ts";
import { Said } from "../../parts/said.tsx";
import { useSession } from "../../parts/session.tsx";
import { Term } from "../../parts/term.tsx";
import { entryTime } from "../../texts/entry-time.ts";
import { indicationLabel } from "../../texts/indications.ts";
import { insertedWords } from "../../texts/inserted.ts";
import { roundText } from "../../texts/round.ts";
import { kindText } from "../../texts/words.ts";
import type { RoundRow } from "./round-rows.ts";

/** The two day numbers, the indication, and when somebody last saw the catheter. */
export function RowFacts({ row, policy }: { row: RoundRow; policy: PolicyBody }): ReactNode {
  const { time } = useSession();
  const { age, eligibilityDay, lastSeenAt, dueAt } = row;
  return (
    <ul className="plain-list round-facts">
      {row.kind !== "indwelling-urethral" && <li>{kindText(row.kind)}</li>}
      {eligibilityDay !== null && (
        <li>
          <Term name="eligibility-day" />: <strong>{roundText("dayNumber", { day: eligibilityDay })}</strong>
        </li>
      )}
      <li>
        <Term name="catheter-age" />: {roundText(age.atLeast ? "ageAtLeast" : "age", { count: age.days })},{" "}
        {insertedWords(row, entryTime(time, row, "insertedAt"))}
      </li>
      <li>
        <Said>{indicationLabel(row.indication, policy)}</Said>
      </li>
      <li>
        {lastSeenAt === null
          ? roundText("neverSeen")
          : roundText("seen", { when: entryTime(time, row, "lastSeenAt")(lastSeenAt) })}
      </li>
      {dueAt !== null && <li>{roundText("dueBy", { time: time.clock(dueAt) })}</li>}
    </ul>
  );
}
