import { type ReactNode, useCallback, useState } from "react";
import { readPolicy } from "../../../../shared/api/policies.ts";
import { readRound } from "../../../../shared/api/rounds.ts";
import { type Day, day as dayText } from "../../../../shared/day.ts";
import { Page } from "../../parts/page.tsx";
import { Said } from "../../parts/said.tsx";
import { useSession } from "../../parts/session.tsx";
import { ShowAnswer } from "../../parts/show-answer.tsx";
import { useAnswer } from "../../parts/use-answer.ts";
import { useChanges } from "../../parts/use-changes.ts";
import { useNow } from "../../parts/use-now.ts";
import type { PageProps } from "../../routes.ts";
import { roundText } from "../../texts/round.ts";
import { UnknownPage } from "../unknown-page.tsx";
import { RoundHead } from "./round-head.tsx";
import { RoundList } from "./round-list.tsx";

/** A ward's round of today, or of a day that is over. */
export function RoundPage({ found, question }: PageProps): ReactNode {
  const { wards } = useSession();
  const day = dayText.safeParse(question.get("day"));
  const ward = wards.find(({ wardId }) => String(wardId) === found.wardId);
  if (!ward) return <UnknownPage />;
  const past = day.success ? day.data : null;
  return (
    <Page title={roundText("title", { ward: ward.code })} heading={<Heading code={ward.code} name={ward.name} />}>
      <RoundOf key={`${ward.wardId} ${past}`} wardId={ward.wardId} past={past} />
    </Page>
  );
}

function Heading({ code, name }: { code: string; name: string }): ReactNode {
  return (
    <>
      {roundText("title", { ward: code })}
      {name !== code && (
        <span className="name-of">
          {" "}
          <Said>{name}</Said>
        </span>
      )}
    </>
  );
}

function RoundOf({ wardId, past }: { wardId: number; past: Day | null }): ReactNode {
  const { wardCode, time, now } = useSession();
  const asked = past === null ? { wardId } : { wardId, day: past };
  const round = useAnswer(readRound, asked);
  const policy = useAnswer(readPolicy, asked);
  const today = time.dayOf(useNow(now, 20_000));
  const [shownDay, setShownDay] = useState(today);
  const isNewDay = past === null && shownDay !== today;
  const again = round.again;
  // A list that turns into another day's without a word would be read for the old one.
  const onChange = useCallback(() => {
    if (past === null && !isNewDay) again();
  }, [past, isNewDay, again]);
  useChanges(onChange);
  const showToday = (): void => {
    setShownDay(today);
    again();
  };
  const what = roundText("what", { ward: wardCode(wardId) });
  return (
    <ShowAnswer asked={round} what={what}>
      {(value) => (
        <ShowAnswer asked={policy} what={what}>
          {({ body }) => (
            <>
              <RoundHead round={value} past={past} today={today} {...(isNewDay ? { showToday } : {})} />
              <RoundList round={value} policy={body} isPast={past !== null} onRecorded={again} />
            </>
          )}
        </ShowAnswer>
      )}
    </ShowAnswer>
  );
}
