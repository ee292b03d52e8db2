import { catalogue } from "./catalogue.ts";

export const reviewsText = catalogue("reviews", {
  record: "Record a chart review: signs not documented",
  lead: "You read the chart of these days, and these signs are not in it. Record documented signs under “Record signs of a day”.",
  windows: "Days around a urine culture:",
  window: "Culture of {{when}}",
  first: "First day reviewed",
  last: "Last day reviewed",
  readAt: "Chart read at",
  readAtHelp: "Days after this day stay not reviewed, whatever last day you enter.",
  which: "Signs that the chart does not document",
  whichHelp: "Checked: signs without any entry on these days.",
  recordIt: "Record the chart review",
  done_one: "{{count}} sign was recorded as not documented.",
  done_other: "{{count}} signs were recorded as not documented.",
  heading: "Chart review of {{days}}",
  range: "{{first}} to {{last}}",
  read: "chart read {{when}}",
  each: "Each sign of this review",
});
