import type { ReactNode } from "react";
import type { Day } from "../../../../shared/day.ts";
import { PageLink } from "../../parts/page-link.tsx";
import { useSession } from "../../parts/session.tsx";
import { WardSelect } from "../../parts/ward-select.tsx";
import { dayAfter, longDayWords } from "../../parts/words.ts";
import { roundText } from "../../texts/round.ts";
import type { Round } from "./round-rows.ts";

/** States in which a review is still to be done today. */
const open = new Set(["overdue", "due", "missed"]);

/** Which day and ward the round is of, the way to others, and how much there is to do. */
export function RoundHead(props: { round: Round; past: Day | null; today: Day; showToday?: () => void }): ReactNode {
  const { round, past, today, showToday } = props;
  const { time } = useSession();
  const day = longDayWords(round.day);
  return (
    <>
      {showToday && <NewDay of={round.day} today={today} show={showToday} />}
      <p className="lead">
        {past === null ? roundText("dayNow", { day, time: time.clock(round.at) }) : roundText("dayPast", { day })}
      </p>
      <Ways round={round} past={past} today={today} />
      {round.rows.length > 0 && <Summary round={round} />}
    </>
  );
}

function NewDay({ of, today, show }: { of: Day; today: Day; show: () => void }): ReactNode {
  return (
    <div role="alert" className="notice">
      <p>
        <strong>{roundText("newDayTitle", { day: longDayWords(today) })}.</strong>{" "}
        {roundText("newDayDetail", { day: longDayWords(of) })}
      </p>
      <button type="button" className="first" onClick={show}>
        {roundText("newDayShow")}
      </button>
    </div>
  );
}

function Ways({ round, past, today }: { round: Round; past: Day | null; today: Day }): ReactNode {
  const { wards } = useSession();
  const address = (day: Day) => `/wards/${round.wardId}/round${day === today ? "" : `?day=${day}`}`;
  return (
    <div className="row on-screen round-ways">
      {wards.length > 1 && (
        <WardSelect id="round-ward" wardId={round.wardId} addressOf={(id) => `/wards/${id}/round`} />
      )}
      <PageLink to={address(dayAfter(round.day, -1))}>{roundText("dayBefore")}</PageLink>
      {past !== null && dayAfter(round.day, 1) <= today && (
        <PageLink to={address(dayAfter(round.day, 1))}>{roundText("dayAfter")}</PageLink>
      )}
      {past !== null && <PageLink to={address(today)}>{roundText("today")}</PageLink>}
      <button type="button" onClick={() => print()}>
        {roundText("toPrint")}
      </button>
    </div>
  );
}

function Summary({ round }: { round: Round }): ReactNode {
  const count = round.rows.filter((row) => row.states.some(({ state }) => open.has(state))).length;
  return (
    <p>
      {roundText("summaryCatheters", { count: round.rows.length })},{" "}
      {count === 0 ? roundText("summaryNone") : roundText("summaryOpen", { count })}.
    </p>
  );
}
