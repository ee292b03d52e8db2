import type { ReactNode } from "react";
import type { readMonthGaps } from "../../../../shared/api/months.ts";
import type { OutputOf } from "../../../../shared/endpoint.ts";
import { Said } from "../../parts/said.tsx";
import { useSession } from "../../parts/session.tsx";
import { dayWords } from "../../parts/words.ts";
import { monthText as text } from "../../texts/month.ts";
import { GapLines } from "./gap-lines.tsx";

type Gap = OutputOf<typeof readMonthGaps>["gaps"][number];

/** What is missing from the month, and what keeps it from being signed, each with the way to mend it. */
export function Gaps({ gaps }: { gaps: readonly Gap[] }): ReactNode {
  if (gaps.length === 0) return <p>{text("gapsNone")}</p>;
  const blocking = gaps.filter(({ blocks }) => blocks);
  const others = gaps.filter(({ blocks }) => !blocks);
  return (
    <>
      {blocking.length > 0 && <GapList title={text("gapsBlocking")} gaps={blocking} />}
      {others.length > 0 && <GapList title={text("gapsOthers")} gaps={others} />}
    </>
  );
}

function GapList({ title, gaps }: { title: string; gaps: readonly Gap[] }): ReactNode {
  return (
    <>
      <h3>{title}</h3>
      <ul className="gaps">
        {gaps.map((gap) => (
          <GapItem key={`${gap.kind} ${gap.wardId}`} gap={gap} />
        ))}
      </ul>
    </>
  );
}

function GapItem({ gap }: { gap: Gap }): ReactNode {
  const { wards } = useSession();
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
      <GapLines gap={gap} />
    </li>
  );
}
