import type { ReactNode } from "react";
import type { compareTwo } from "../../../../shared/api/ward-comparisons.ts";
import type { OutputOf } from "../../../../shared/endpoint.ts";
import { Said } from "../../parts/said.tsx";
import { figureWords } from "../../parts/words.ts";
import { comparisonText as text } from "../../texts/comparison.ts";

type Two = OutputOf<typeof compareTwo>;
type Test = Two["tests"][number];

const names = { rate: "rateOf", sir: "sirOf", utilization: "utilizationOf" } as const;
const shown = (value: number | null) => figureWords(value, "ratio");

/** What tests of two wards or periods found, as figures and in words, with what must be said beside any such test. */
export function TestsOfTwo({ answer }: { answer: Two }): ReactNode {
  return (
    <>
      <div className="wide">
        <table className="ledger both">
          <caption>{text("twoCaption")}</caption>
          <thead>
            <tr>
              <th scope="col">{text("figure")}</th>
              {(["first", "second", "ratio", "chance"] as const).map((key) => (
                <th key={key} scope="col" className="figure">
                  {text(key)}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {answer.tests.map((test) => (
              <TestRow key={test.what} test={test} />
            ))}
          </tbody>
        </table>
      </div>
      <h3>{text("inWords")}</h3>
      <ul>
        {[...answer.tests.map(({ sentence }) => sentence), ...answer.cautions].map((sentence) => (
          <li key={sentence}>
            <Said>{sentence}</Said>
          </li>
        ))}
      </ul>
    </>
  );
}

function TestRow({ test }: { test: Test }): ReactNode {
  const { what, first, second, ratio, p } = test;
  return (
    <tr>
      <th scope="row">{text(names[what])}</th>
      <td className="figure">{shown(first)}</td>
      <td className="figure">{shown(second)}</td>
      <td className="figure">
        {shown(ratio.value)}
        {ratio.lower !== null && ratio.upper !== null && (
          <span className="limits"> {text("limits", { lower: shown(ratio.lower), upper: shown(ratio.upper) })}</span>
        )}
      </td>
      <td className="figure">{p === null ? text("missing") : p < 0.001 ? "< 0.001" : p.toFixed(3)}</td>
    </tr>
  );
}
