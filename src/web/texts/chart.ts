import { catalogue } from "./catalogue.ts";

/** The texts around every chart. */
export const chartText = catalogue("chart", {
  scroll: "{{title}}; scrolls sideways",
  skip: "Skip the picture",
  hint: "Reach the picture with Tab and go through it with the arrow keys: the focused point is described here.",
  table: "The same as a table",
  nothing: "–",
});
