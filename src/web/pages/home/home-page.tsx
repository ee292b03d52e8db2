import type { ReactNode } from "react";
import { readWardsNow } from "../../../../shared/api/wards-now.ts";
import type { OutputOf } from "../../../../shared/endpoint.ts";
import { Hint } from "../../parts/hint.tsx";
import { Page } from "../../parts/page.tsx";
import { PageLink } from "../../parts/page-link.tsx";
import { type Session, useSession } from "../../parts/session.tsx";
import { ShowAnswer } from "../../parts/show-answer.tsx";
import { useAnswer } from "../../parts/use-answer.ts";
import { homeText } from "../../texts/home.ts";
import { ChangedMonths } from "./changed-months.tsx";
import { MonthSoFar } from "./month-so-far.tsx";
import { WardCards } from "./ward-cards.tsx";

/** What each role is told on its first visit; the first role that somebody has counts. */
const hints = {
  bedside: "hintBedside",
  prevention: "hintPrevention",
  manager: "hintManager",
  administrator: "hintAdministrator",
} as const;

/** The wards of the viewer as they are now, and the month so far. */
export function HomePage(): ReactNode {
  const session = useSession();
  const { me, may } = session;
  const role = (["bedside", "prevention", "manager", "administrator"] as const).find((one) => me.roles.includes(one));
  return (
    <Page title={homeText("title")}>
      {role && (
        <Hint name={`home-${role}`} title={homeText("hintTitle")}>
          {homeText(hints[role])}
        </Hint>
      )}
      {may("judge-cases") && (
        <p>
          <PageLink to="/cases" className="button first">
            {homeText("cases")}
          </PageLink>
        </p>
      )}
      {may("sign-month") && <ChangedMonths />}
      {may("see-counts") ? <Wards session={session} /> : <p>{homeText("noFigures")}</p>}
    </Page>
  );
}

function Wards({ session }: { session: Session }): ReactNode {
  const asked = useAnswer(readWardsNow, {});
  return (
    <>
      <ShowAnswer asked={asked} what={homeText("what")}>
        {(answer) => <WardsNow answer={answer} session={session} />}
      </ShowAnswer>
      <MonthSoFar />
    </>
  );
}

function WardsNow(props: { answer: OutputOf<typeof readWardsNow>; session: Session }): ReactNode {
  const { answer, session } = props;
  if (answer.wards.length === 0) {
    return (
      <div className="notice">
        <p>
          <strong>{homeText("none")}</strong>
        </p>
        <p>{homeText("noneHow")}</p>
      </div>
    );
  }
  return (
    <>
      <p className="small">{homeText("asOf", { when: session.time.short(answer.at) })}</p>
      <WardCards wards={answer.wards} seesPatients={session.may("see-patients")} />
    </>
  );
}
