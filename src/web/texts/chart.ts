import { catalogue } from "./catalogue.ts";

/** What stands around every chart. */
export const chartText = catalogue("chart", {
  scroll: "{{title}}; scrolls sideways",
  skip: "Past the picture",
  hint: "Reach the picture with Tab and go through it with the arrow keys: what is under the focus is said here.",
  table: "The same as a table",
  nothing: "–",
});
