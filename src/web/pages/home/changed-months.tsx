import type { ReactNode } from "react";
import { listChangedMonths } from "../../../../shared/api/month-figures.ts";
import { auditActions } from "../../../../shared/audit-words.ts";
import { PageLink } from "../../parts/page-link.tsx";
import { Said } from "../../parts/said.tsx";
import { useSession } from "../../parts/session.tsx";
import { useAnswer } from "../../parts/use-answer.ts";
import { monthWords } from "../../parts/words.ts";
import { homeText } from "../../texts/home.ts";

/** The signed months that have changed since, each with its units and what was recorded last. */
export function ChangedMonths(): ReactNode {
  const asked = useAnswer(listChangedMonths, {});
  const { time } = useSession();
  if (asked.state !== "answered" || asked.value.months.length === 0) return null;
  return (
    <section className="notice" aria-labelledby="changed-months">
      <h2 id="changed-months">{homeText("changedMonths")}</h2>
      <ul>
        {asked.value.months.map(({ month, changes, wards, latest }) => (
          <li key={month}>
            <PageLink to={`/months/${month}`}>{monthWords(month)}</PageLink>{" "}
            {wards.length > 0 && <Said>{homeText("changedUnits", { wards: wards.join(", ") })}</Said>}{" "}
            {homeText("changedTimes", { count: changes })}{" "}
            <Said>
              {homeText("changedLast", {
                what: auditActions[latest.action].toLowerCase(),
                when: time.short(latest.at),
              })}
            </Said>
          </li>
        ))}
      </ul>
    </section>
  );
}
