import { type ReactNode, startTransition, useEffect, useState } from "react";
import type { PolicyBody } from "../../../../shared/policy.ts";
import { PageLink } from "../../parts/page-link.tsx";
import { useSession } from "../../parts/session.tsx";
import { roundText } from "../../texts/round.ts";
import { RoundCard } from "./round-card.tsx";
import { RoundPrint } from "./round-print.tsx";
import type { Round } from "./round-rows.ts";

/** The least height of a card at any width, in pixels. */
const leastCardHeight = 140;

/** How many catheters are drawn at first: those that the window can show. */
const firstCards = (): number => Math.ceil(innerHeight / leastCardHeight);

/** The catheters of a round. Their order stays as it was when the page opened, so that nothing moves under a finger. */
export function RoundList(props: {
  round: Round;
  policy: PolicyBody;
  isPast: boolean;
  onRecorded: () => void;
}): ReactNode {
  const { round, policy, isPast, onRecorded } = props;
  const [order] = useState(() => round.rows.map((row) => row.catheterId));
  // What stands below the first window is drawn after what a person sees first.
  const [firstCount] = useState(firstCards);
  const [isWhole, setWhole] = useState(false);
  useEffect(() => startTransition(() => setWhole(true)), []);
  if (round.rows.length === 0) return <Nothing wardId={round.wardId} />;
  const placeOf = (catheterId: number): number => {
    const at = order.indexOf(catheterId);
    return at === -1 ? order.length : at;
  };
  const rows = [...round.rows].sort((a, b) => placeOf(a.catheterId) - placeOf(b.catheterId));
  return (
    <>
      <ol className="plain-list on-screen" aria-label={roundText("list")}>
        {(isWhole ? rows : rows.slice(0, firstCount)).map((row) => (
          <li key={row.catheterId}>
            <RoundCard {...{ row, policy, isPast, onRecorded }} />
          </li>
        ))}
      </ol>
      {isWhole && <RoundPrint round={round} policy={policy} />}
    </>
  );
}

function Nothing({ wardId }: { wardId: number }): ReactNode {
  const ward = useSession().wardCode(wardId);
  return (
    <div className="notice done">
      <p>
        <strong>{roundText("nothing", { ward })}</strong>
      </p>
      <p>{roundText("nothingHow")}</p>
      <PageLink to={`/wards/${wardId}/patients`}>{roundText("toPatients", { ward })}</PageLink>
    </div>
  );
}
