import { type ReactNode, useEffect, useRef, useState } from "react";
import type { Chart } from "../../charts/chart.ts";
import { chartText } from "../texts/chart.ts";
import { ChartTableShown } from "./chart/chart-table.tsx";
import { Drawing } from "./drawing.tsx";
import { Said } from "./said.tsx";

/**
 * A chart with what stands with it: its sentence, the text of the point that has the focus, and the same figures as a
 * table. A wide one scrolls sideways; `after` names where to go on without passing its points.
 */
export function ChartView({ chart, after }: { chart: Chart; after?: string }): ReactNode {
  const [text, setText] = useState<string | null>(null);
  const place = useRef<HTMLElement>(null);
  useEffect(() => bringMarkedIntoView(place.current), []);
  return (
    <figure className="chart-view">
      <p className="small">
        <Said>{chart.sentence}</Said>
      </p>
      <section ref={place} className="wide picture" aria-label={chartText("scroll", { title: chart.title })}>
        {after !== undefined && (
          <a className="step small on-screen" href={`#${after}`}>
            {chartText("skip")}
          </a>
        )}
        <Drawing svg={chart.svg} onPoint={setText} />
      </section>
      <p className="chart-live on-screen" aria-live="polite">
        {text === null ? chartText("hint") : <Said>{text}</Said>}
      </p>
      <details className="chart-table">
        <summary>{chartText("table")}</summary>
        <ChartTableShown table={chart.table} nothing={chartText("nothing")} />
      </details>
    </figure>
  );
}

/** Scrolls a wide chart sideways to what stands out in it, where it has such a mark. */
function bringMarkedIntoView(scrolled: HTMLElement | null): void {
  const marked = scrolled?.querySelector(".chart-signal");
  if (!scrolled || !marked) return;
  const { left, width } = marked.getBoundingClientRect();
  scrolled.scrollLeft += left + width / 2 - scrolled.getBoundingClientRect().left - scrolled.clientWidth / 2;
}
