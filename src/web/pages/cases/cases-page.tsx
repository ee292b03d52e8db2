import type { ReactNode } from "react";
import { listCases } from "../../../../shared/api/cases.ts";
import { caseList } from "../../../../shared/case-words.ts";
import { goTo } from "../../parts/address.ts";
import { Page } from "../../parts/page.tsx";
import { PageLink } from "../../parts/page-link.tsx";
import { Said } from "../../parts/said.tsx";
import { useSession } from "../../parts/session.tsx";
import { ShowAnswer } from "../../parts/show-answer.tsx";
import { useAnswer } from "../../parts/use-answer.ts";
import type { PageProps } from "../../routes.ts";
import { casesText } from "../../texts/case.ts";
import { caseListText } from "../../texts/culture-words.ts";
import { CaseCard } from "./case-card.tsx";
import { addressOfFilter, type CaseFilter, type Cases, filtered, filterOf, monthIn } from "./case-filter.ts";

/** Urine cultures that wait for somebody, and those that are settled. What is shown stands in the address. */
export function CasesPage({ question }: PageProps): ReactNode {
  const filter = filterOf(question);
  const month = monthIn(filter.month);
  const asked = useAnswer(listCases, { list: filter.list, ...(month === null ? {} : { month }) });
  return (
    <Page title={casesText("title")}>
      <p className="lead">{casesText("lead")}</p>
      <ShowAnswer asked={asked} what={casesText("what")}>
        {(answer) => (
          <>
            <p className="notice hint">
              <Said>{answer.caution}</Said>
            </p>
            <Lists filter={filter} counts={answer.counts} />
            <Filter filter={filter} />
            <Shown answer={answer} filter={filter} />
          </>
        )}
      </ShowAnswer>
    </Page>
  );
}

function Lists({ filter, counts }: { filter: CaseFilter; counts: Cases["counts"] }): ReactNode {
  return (
    <nav aria-label={casesText("lists")} className="on-screen">
      <ul className="plain-list row">
        {caseList.options.map((list) => (
          <li key={list}>
            <PageLink to={addressOfFilter({ ...filter, list })} className="button" isCurrent={list === filter.list}>
              {casesText("list", { list: caseListText(list), count: counts[list] })}
            </PageLink>
          </li>
        ))}
      </ul>
    </nav>
  );
}

function Filter({ filter }: { filter: CaseFilter }): ReactNode {
  const { wards } = useSession();
  const show = (part: Partial<CaseFilter>) => goTo(addressOfFilter({ ...filter, ...part }), { replace: true });
  return (
    <div className="row on-screen case-filter">
      <div className="field">
        <label htmlFor="ward">{casesText("ward")}</label>
        <select
          id="ward"
          value={filter.wardId ?? ""}
          onChange={(event) => show({ wardId: event.target.value === "" ? null : Number(event.target.value) })}
        >
          <option value="">{casesText("allWards")}</option>
          {wards.map(({ wardId, code }) => (
            <option key={wardId} value={wardId}>
              {code}
            </option>
          ))}
        </select>
      </div>
      <div className="field">
        <label htmlFor="month">{casesText("month")}</label>
        <input
          id="month"
          type="month"
          value={filter.month ?? ""}
          onChange={(event) => show({ month: monthIn(event.target.value) })}
        />
      </div>
      <label className="choice">
        <input type="checkbox" checked={filter.hinging} onChange={(event) => show({ hinging: event.target.checked })} />
        <span>{casesText("hingingOnly")}</span>
      </label>
      <label className="choice">
        <input
          type="checkbox"
          checked={filter.fewTemperatures}
          onChange={({ target }) => show({ fewTemperatures: target.checked })}
        />
        <span>{casesText("fewTemperaturesOnly")}</span>
      </label>
      {filter.list === "waiting" && (
        <label className="choice">
          <input
            type="checkbox"
            checked={filter.changedOnly}
            onChange={(event) => show({ changedOnly: event.target.checked })}
          />
          <span>{casesText("changedOnly")}</span>
        </label>
      )}
    </div>
  );
}

function Shown({ answer, filter }: { answer: Cases; filter: CaseFilter }): ReactNode {
  const shown = filtered(answer.cases, filter);
  if (answer.cases.length === 0) {
    return <p className="notice done">{casesText(filter.list === "waiting" ? "noneWaiting" : "none")}</p>;
  }
  return (
    <>
      {filter.list === "out-of-scope" && <p>{casesText("outOfScope")}</p>}
      {filter.month === null && filter.list !== "waiting" && filter.list !== "pending" && (
        <p className="small">{casesText("settledSince")}</p>
      )}
      <p className="small">
        {casesText("hinge", { count: shown.filter(({ hinges }) => hinges.length > 0).length, all: shown.length })}
      </p>
      {shown.length === 0 && <p>{casesText("noneFiltered", { count: answer.cases.length })}</p>}
      <ol className="plain-list">
        {shown.map((one) => (
          <li key={one.caseId}>
            <CaseCard one={one} />
          </li>
        ))}
      </ol>
    </>
  );
}
