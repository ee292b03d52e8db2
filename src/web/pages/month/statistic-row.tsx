import type { ReactNode } from "react";
import { type FigureKey, figureWords } from "../../../../shared/figure-words.ts";
import type { Figure } from "../../../../shared/month-report.ts";
import { Said } from "../../parts/said.tsx";
import { numberWords } from "../../parts/words.ts";
import { statisticsText as text } from "../../texts/statistics.ts";

/** A figure with its interval, or why it is missing; what it is made of, and by which method. */
export function StatisticRow({ figure }: { figure: Figure }): ReactNode {
  const { key, value, numerator, denominator, p, method, reason, limitsReason } = figure;
  const { label, unit } = figureWords[key];
  const digits = digitsOf(key);
  return (
    <tr>
      <th scope="row">
        <Said>{label}</Said>
        <span className="small">
          {" "}
          <Said>{unit}</Said>
        </span>
      </th>
      <td>
        {value === null ? <Said>{reason}</Said> : <strong>{numberWords(value, digits)}</strong>}
        <Interval figure={figure} digits={digits} />
        {p !== null && <span className="small"> {text("p", { p: numberWords(p, 4) })}</span>}
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
      </td>
    </tr>
  );
}

function Interval({ figure, digits }: { figure: Figure; digits: number }): ReactNode {
  const { lower, upper } = figure;
  if (lower === null && upper === null) return null;
  const words = (limit: number | null) => (limit === null ? text("open") : numberWords(limit, digits));
  return <span className="small"> {text("interval", { lower: words(lower), upper: words(upper) })}</span>;
}

/** Ratios to a prediction are published to three decimals, other ratios and rates to two. */
function digitsOf(key: FigureKey): number {
  if (key === "sir" || key === "sur") return 3;
  const { kind } = figureWords[key];
  if (kind === "whole") return 0;
  return kind === "amount" ? 1 : 2;
}

/** A count, or a predicted number, which has decimals. */
function amountWords(amount: number): string {
  return numberWords(amount, Number.isInteger(amount) ? 0 : 3);
}
