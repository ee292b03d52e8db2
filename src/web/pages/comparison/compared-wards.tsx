import { Fragment, type ReactNode, useState } from "react";
import type { compareWards } from "../../../../shared/api/ward-comparisons.ts";
import { type Month, month as monthText } from "../../../../shared/day.ts";
import type { OutputOf } from "../../../../shared/endpoint.ts";
import { NotFinal } from "../../parts/not-final.tsx";
import { Said } from "../../parts/said.tsx";
import { useSession } from "../../parts/session.tsx";
import { figureWords } from "../../parts/words.ts";
import { comparisonText as text } from "../../texts/comparison.ts";
import { Figure } from "../month/figure.tsx";
import { WardDays } from "../month/ward-days.tsx";

type Comparison = OutputOf<typeof compareWards>;
type Ward = Comparison["wards"][number];

/** The wards with their figures and limits, by code; figures of wards that the person may open lead to ward days. */
export function ComparedWards({ answer }: { answer: Comparison }): ReactNode {
  return (
    <section aria-labelledby="wards">
      <h2 id="wards">{text("wards")}</h2>
      <div className="wide">
        <table className="ledger both compared">
          <caption>
            {text("caption")} <span className="on-screen">{text("opens")}</span>
          </caption>
          <thead>
            <tr>
              <th scope="col">{text("wardHead")}</th>
              {(["patientDays", "catheterDays", "infections", "rate", "utilization"] as const).map((key) => (
                <th scope="col" className="figure" key={key}>
                  {text(key)}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {answer.wards.map((ward) => (
              <WardRow key={ward.code} ward={ward} to={answer.to} from={answer.from} />
            ))}
          </tbody>
        </table>
      </div>
    </section>
  );
}

function WardRow({ ward, from, to }: { ward: Ward; from: Month; to: Month }): ReactNode {
  const [isOpen, setOpen] = useState(false);
  const { wardId, code, name, type, note, rate, utilization } = ward;
  const panelId = `compared-${code}`;
  const opening = { isOpen, panelId, toggle: () => setOpen(!isOpen), words: text("opensWard", { ward: code }) };
  const reason = rate.value === null && rate.reason !== null ? `${note} ${rate.reason}`.trim() : note;
  return (
    <Fragment>
      <tr className={isOpen ? "open" : undefined}>
        <th scope="row">
          <span className="code">
            <Said>{code}</Said>
          </span>{" "}
          <span className="name-of">
            <Said>{name === code ? "" : `${name}, `}</Said>
            {type === null ? text("notGiven") : <Said>{type}</Said>}
          </span>
          {reason !== "" && (
            <span className="note">
              <Said>{reason}</Said>
            </span>
          )}
        </th>
        <Figure cell={ward.patientDays} kind="whole" />
        <Figure cell={ward.catheterDays} kind="whole" opening={wardId === null ? undefined : opening} />
        <Figure cell={ward.infections} kind="whole" open={ward.open} />
        <Limited figure={rate} open={ward.open} />
        <Limited figure={utilization} />
      </tr>
      {isOpen && wardId !== null && (
        <tr className="panel">
          <td colSpan={6} id={panelId}>
            <WardMonths wardId={wardId} code={code} from={from} to={to} />
          </td>
        </tr>
      )}
    </Fragment>
  );
}

function Limited({ figure, open }: { figure: Ward["rate"]; open?: number }): ReactNode {
  const { value, lower, upper } = figure;
  const shown = (one: number | null) => figureWords(one, "ratio");
  return (
    <td className="figure">
      {value === null ? text("missing") : shown(value)}
      {value !== null && <NotFinal open={open} />}
      {lower !== null && upper !== null && (
        <span className="limits"> {text("limits", { lower: shown(lower), upper: shown(upper) })}</span>
      )}
    </td>
  );
}

/** The ward days of one month of the period, the last one first. */
function WardMonths(props: { wardId: number; code: string; from: Month; to: Month }): ReactNode {
  const { wardId, code, from, to } = props;
  const seesPatients = useSession().may("see-patients");
  const [month, setMonth] = useState(to);
  const choose = (value: string): void => {
    const read = monthText.safeParse(value);
    if (read.success) setMonth(read.data);
  };
  const id = `month-of-${wardId}`;
  return (
    <>
      <p>
        <label htmlFor={id}>{text("monthShown")}</label>{" "}
        <input
          id={id}
          type="month"
          min={from}
          max={to}
          value={month}
          onChange={(event) => choose(event.target.value)}
        />
      </p>
      <WardDays {...{ wardId, month, code, seesPatients }} />
    </>
  );
}
