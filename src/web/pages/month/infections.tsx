import { Fragment, type ReactNode, useState } from "react";
import type { readMonth } from "../../../../shared/api/months.ts";
import type { CaseList } from "../../../../shared/case-words.ts";
import type { OutputOf } from "../../../../shared/endpoint.ts";
import { OpensOnce } from "../../parts/opens-once.tsx";
import { PageLink } from "../../parts/page-link.tsx";
import { Said } from "../../parts/said.tsx";
import { useSession } from "../../parts/session.tsx";
import { Term } from "../../parts/term.tsx";
import { daysOfMonth } from "../../parts/words.ts";
import { infectionsText as text } from "../../texts/infections.ts";
import { addressOfFilter, allCases } from "../cases/case-filter.ts";
import { CatheterCultures } from "./catheter-cultures.tsx";
import { Figure } from "./figure.tsx";
import { NoneFound } from "./none-found.tsx";
import { WardEvents } from "./ward-events.tsx";

type MonthAnswer = OutputOf<typeof readMonth>;

/** The infections of a month by location of attribution, with what waits and cannot be told beside the count. */
export function Infections({ answer, again }: { answer: MonthAnswer; again: () => void }): ReactNode {
  const { may } = useSession();
  const { infections } = answer;
  if (infections.length === 0) return null;
  return (
    <section aria-labelledby="infections">
      <h2 id="infections">{text("title")}</h2>
      <p>
        {text("lead")} {may("judge-cases") && <PageLink to="/cases">{text("toCases")}</PageLink>}{" "}
        <PageLink to={`/infections?${new URLSearchParams({ ...daysOfMonth(answer.month) })}`}>
          {text("toPeriod")}
        </PageLink>
      </p>
      <section className="wide" aria-label={text("scroll")}>
        <table className="ledger infections">
          <caption>{text("caption")}</caption>
          <InfectionHead />
          <tbody>
            {infections.map((ward) => (
              <WardRow key={ward.wardId} {...{ ward, month: answer.month, again }} />
            ))}
          </tbody>
        </table>
      </section>
      <OpensOnce summary={text("cultures")}>
        <CatheterCultures month={answer.month} />
      </OpensOnce>
    </section>
  );
}

function InfectionHead(): ReactNode {
  return (
    <thead>
      <tr>
        <th scope="col">{text("ward")}</th>
        <th scope="col" className="figure">
          <Term name="cauti">{text("cautis")}</Term>
        </th>
        {(["waiting", "cannotTell", "pending", "closed", "hinging", "fewTemperatures"] as const).map((column) => (
          <th scope="col" className="figure" key={column}>
            {text(column)}
          </th>
        ))}
        <th scope="col">{text("noneFound")}</th>
      </tr>
    </thead>
  );
}

function WardRow(props: {
  ward: MonthAnswer["infections"][number];
  month: MonthAnswer["month"];
  again: () => void;
}): ReactNode {
  const { ward, month, again } = props;
  const { wardCode } = useSession();
  const [isOpen, setOpen] = useState(false);
  const { wardId, isWatched, cautis, open } = ward;
  const code = wardCode(wardId);
  const opening = {
    ...{ isOpen, panelId: `events-${wardId}`, toggle: () => setOpen(!isOpen) },
    words: text("opens", { ward: code }),
  };
  return (
    <Fragment>
      <tr className={isOpen ? "open" : undefined}>
        <th scope="row">
          <span className="code">
            <Said>{code}</Said>
          </span>
          {!isWatched && <span className="note">{text("notWatched")}</span>}
        </th>
        <Figure
          {...{ kind: "whole", open, cell: isWatched ? cautis : null }}
          opening={cautis > 0 ? opening : undefined}
        />
        <CultureCells {...{ ward, month }} />
        <td>
          <NoneFound {...{ ward, month, code, again }} />
        </td>
      </tr>
      {isOpen && (
        <tr className="panel">
          <td colSpan={9} id={opening.panelId}>
            <WardEvents {...{ month, code }} />
          </td>
        </tr>
      )}
    </Fragment>
  );
}

/** How far people are with the cultures of a unit, each count with the list that it opens. */
function CultureCells({ ward, month }: Pick<Parameters<typeof WardRow>[0], "ward" | "month">): ReactNode {
  const { wardId, waiting, cannotTell, pending, closed, hinging, fewTemperatures, determined } = ward;
  const toList = (count: number, list: CaseList): ReactNode => <ToList {...{ count, list, wardId }} />;
  const ofMonth = { wardId, month };
  const ofDetermined = (count: number) => text("ofDetermined", { count, determined });
  return (
    <>
      <td className="figure">{toList(waiting, "waiting")}</td>
      <td className="figure">{toList(cannotTell, "waiting")}</td>
      <td className="figure">{toList(pending, "pending")}</td>
      <td className="figure">
        <ToList count={closed} list="closed" {...ofMonth} />
      </td>
      <td className="figure">
        <ToList count={hinging} list="all" {...ofMonth} hinging words={ofDetermined(hinging)} />
      </td>
      <td className="figure">
        <ToList
          {...{ count: fewTemperatures, list: "all", ...ofMonth, words: ofDetermined(fewTemperatures) }}
          fewTemperatures
        />
      </td>
    </>
  );
}

/** A figure that leads to its cultures, for who works on them. */
function ToList(props: {
  count: number;
  list: CaseList;
  wardId: number;
  month?: string;
  hinging?: boolean;
  fewTemperatures?: boolean;
  words?: string;
}): ReactNode {
  const { count, list, wardId, month = null, hinging = false, fewTemperatures = false } = props;
  const { words = String(count) } = props;
  const { may } = useSession();
  if (count === 0 || !may("judge-cases")) return words;
  return (
    <PageLink to={addressOfFilter({ ...allCases, list, wardId, month, hinging, fewTemperatures })}>{words}</PageLink>
  );
}
