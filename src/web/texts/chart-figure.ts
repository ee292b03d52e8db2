import { catalogue } from "./catalogue.ts";

export const chartFigureText = catalogue("chart-figure", {
  hint: "Go to the chart with the tab key and from point to point with the arrows, or point at one: its figures show here.",
  table: "The figures as a table",
  tableOf: "Table: {{title}}",
  missing: "missing",
});
