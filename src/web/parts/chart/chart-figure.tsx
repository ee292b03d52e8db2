import { type ReactNode, useMemo, useState } from "react";
import type { ChartInput } from "../../../../shared/chart-input.ts";
import type { Chart } from "../../../charts/chart.ts";
import { drawChart } from "../../../charts/draw-chart.ts";
import { chartFigureText as text } from "../../texts/chart-figure.ts";
import { Drawing } from "../drawing.tsx";
import { Said } from "../said.tsx";
import { ChartTableShown } from "./chart-table.tsx";

/** A chart with its heading, the sentence on what it shows and what not, the text of a point, and the table behind it. */
export function ChartFigure({ chart }: { chart: ChartInput }): ReactNode {
  const drawn = useMemo(() => drawChart(chart), [chart]);
  const { id, title, sentence } = chart.input;
  return (
    <section className="chart-section" aria-labelledby={`${id}-heading`}>
      <h2 id={`${id}-heading`}>
        <Said>{title}</Said>
      </h2>
      {drawn === null ? (
        <p className="notice">
          <Said>{sentence}</Said>
        </p>
      ) : (
        <DrawnChart drawn={drawn} notes={chart.notes} />
      )}
    </section>
  );
}

function DrawnChart({ drawn, notes }: { drawn: Chart; notes: readonly string[] }): ReactNode {
  const [point, setPoint] = useState<string | null>(null);
  return (
    <figure className="chart-figure">
      <div className="chart-frame" lang="en-US" data-said="">
        <Drawing svg={drawn.svg} onPoint={setPoint} />
      </div>
      <p className="chart-point-text small on-screen" aria-live="polite">
        {point === null ? text("hint") : <Said>{point}</Said>}
      </p>
      <figcaption>
        <Said>{drawn.sentence}</Said>
      </figcaption>
      {notes.length > 0 && (
        <ul>
          {notes.map((note) => (
            <li key={note}>
              <Said>{note}</Said>
            </li>
          ))}
        </ul>
      )}
      <details>
        <summary>{text("table")}</summary>
        <ChartTableShown table={drawn.table} />
      </details>
    </figure>
  );
}
