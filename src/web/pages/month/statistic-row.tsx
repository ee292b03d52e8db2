import { Fragment, type ReactNode, useId, useState } from "react";
import { digitsOf, figureWords } from "../../../../shared/figure-words.ts";
import type { Figure } from "../../../../shared/month-report.ts";
import { NotFinal } from "../../parts/not-final.tsx";
import { Said } from "../../parts/said.tsx";
import { numberWords } from "../../parts/words.ts";
import { statisticsText as text } from "../../texts/statistics.ts";
import type { Opening } from "./figure.tsx";
import { type OpenedFigure, StatisticRows } from "./statistic-rows.tsx";

/** A p value below this has no digits to show. */
const smallestP = 0.0001;

/** A figure with its interval, or why it is missing; what it is made of, and by which method. */
export function StatisticRow(props: { figure: Figure } & Omit<OpenedFigure, "figure">): ReactNode {
  const { figure, ...of } = props;
  const [isOpen, setOpen] = useState(false);
  const { key, value, numerator, denominator, p, method, reason, limitsReason, open } = figure;
  const { label, unit, rows } = figureWords[key];
  const digits = digitsOf(key);
  const panelId = useId();
  return (
    <Fragment>
      <tr className={isOpen ? "open" : undefined}>
        <th scope="row">
          <Said>{label}</Said>
          <span className="small">
            {" "}
            <Said>{unit}</Said>
          </span>
        </th>
        <td>
          {value === null ? <Said>{reason}</Said> : <strong>{numberWords(value, digits)}</strong>}
          <NotFinal open={open} />
          <Interval figure={figure} digits={digits} />
          {p !== null && <span className="small"> {chanceWords(p)}</span>}
          {value !== null && limitsReason !== null && (
            <span className="small">
              {" "}
              <Said>{limitsReason}</Said>
            </span>
          )}
        </td>
        <td>
          {numerator !== null && denominator !== null && (
            <span>{text("parts", { part: amountWords(numerator), whole: amountWords(denominator) })}</span>
          )}
          {method !== null && (
            <span className="small">
              {" "}
              <Said>{method}</Said>
            </span>
          )}
          {rows !== null && value !== null && (
            <RowsButton label={label} opening={{ isOpen, panelId, toggle: () => setOpen(!isOpen) }} />
          )}
        </td>
      </tr>
      {isOpen && (
        <tr className="panel">
          <td colSpan={3} id={panelId}>
            <StatisticRows {...of} figure={key} />
          </td>
        </tr>
      )}
    </Fragment>
  );
}

/** Opens a figure down to its rows. */
function RowsButton(props: { label: string; opening: Omit<Opening, "words"> }): ReactNode {
  const { isOpen, panelId, toggle } = props.opening;
  return (
    <button
      type="button"
      className="on-screen"
      aria-expanded={isOpen}
      aria-controls={isOpen ? panelId : undefined}
      onClick={toggle}
    >
      {text("rows")}
      <span className="unseen">
        {" "}
        <Said>{props.label}</Said>
      </span>
    </button>
  );
}

function Interval({ figure, digits }: { figure: Figure; digits: number }): ReactNode {
  const { lower, upper } = figure;
  if (lower === null && upper === null) return null;
  const words = (limit: number | null) => (limit === null ? text("open") : numberWords(limit, digits));
  return <span className="small"> {text("interval", { lower: words(lower), upper: words(upper) })}</span>;
}

/** A count, or a predicted number, which has decimals. */
function amountWords(amount: number): string {
  return numberWords(amount, Number.isInteger(amount) ? 0 : 3);
}

/** A p value, never as zero. */
function chanceWords(p: number): string {
  return p < smallestP ? text("pBelow", { p: smallestP }) : text("p", { p: numberWords(p, 4) });
}
