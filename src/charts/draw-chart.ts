import type { ChartInput } from "../../shared/chart-input.ts";
import type { Chart } from "./chart.ts";
import { controlChart } from "./control-chart.ts";
import { dwellChart } from "./dwell-chart.ts";
import { funnelChart } from "./funnel-chart.ts";
import { intervalList } from "./interval-list.ts";
import { trendChart } from "./trend-chart.ts";

/** The chart of what an answer holds: the same on the server and in the browser. Null where there is nothing to draw. */
export function drawChart(chart: ChartInput): Chart | null {
  if (chart.kind === "funnel") return funnelChart(chart.input);
  if (chart.kind === "intervals") return intervalList(chart.input);
  if (chart.kind === "control") return controlChart(chart.input);
  if (chart.kind === "trend") return trendChart(chart.input);
  return chart.kind === "dwell" ? dwellChart(chart.input) : null;
}
