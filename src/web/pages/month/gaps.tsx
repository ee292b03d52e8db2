import type { ReactNode } from "react";
import type { readMonthGaps } from "../../../../shared/api/months.ts";
import type { Month } from "../../../../shared/day.ts";
import type { OutputOf } from "../../../../shared/endpoint.ts";
import { Said } from "../../parts/said.tsx";
import { useSession } from "../../parts/session.tsx";
import { dayWords } from "../../parts/words.ts";
import { monthText as text } from "../../texts/month.ts";
import { GapLines } from "./gap-lines.tsx";
import { UncountedPatients } from "./uncounted-patients.tsx";

type Gap = OutputOf<typeof readMonthGaps>["gaps"][number];

/** What is missing from the month, and what keeps it from being signed, each with the way to mend it. */
export function Gaps({ month, gaps }: { month: Month; gaps: readonly Gap[] }): ReactNode {
  if (gaps.length === 0) return <p>{text("gapsNone")}</p>;
  const blocking = gaps.filter(({ blocks }) => blocks);
  const others = gaps.filter(({ blocks }) => !blocks);
  return (
    <>
      {blocking.length > 0 && <GapList {...{ month }} title={text("gapsBlocking")} gaps={blocking} />}
      {others.length > 0 && <GapList {...{ month }} title={text("gapsOthers")} gaps={others} />}
    </>
  );
}

function GapList({ month, title, gaps }: { month: Month; title: string; gaps: readonly Gap[] }): ReactNode {
  return (
    <>
      <h3>{title}</h3>
      <ul className="gaps">
        {gaps.map((gap) => (
          <GapItem key={`${gap.kind} ${gap.wardId}`} {...{ month, gap }} />
        ))}
      </ul>
    </>
  );
}

/** The items that patients of uncounted days make. */
const uncountedOf = { "absence-at-census": "no-ward", "outpatient-at-census": "outpatient" } as const;

function GapItem({ month, gap }: { month: Month; gap: Gap }): ReactNode {
  const { wards, may } = useSession();
  const { kind, wardId } = gap;
  const ward = wards.find(({ wardId }) => wardId === gap.wardId);
  return (
    <li>
      {ward && (
        <strong>
          <Said>{ward.code}</Said>:{" "}
        </strong>
      )}
      <Said>{gap.sentence}</Said> <Said>{gap.remedy}</Said>
      {gap.days.length > 0 && (
        <span className="small"> {text("gapDays", { days: gap.days.map(dayWords).join("; ") })}</span>
      )}
      {kind in uncountedOf && may("see-patients") && (
        <UncountedPatients {...{ month, wardId }} kind={uncountedOf[kind as keyof typeof uncountedOf]} />
      )}
      <GapLines gap={gap} />
    </li>
  );
}
