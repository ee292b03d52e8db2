import { catalogue } from "./catalogue.ts";

export const reviewsText = catalogue("reviews", {
  record: "Record a chart review: signs not documented",
  lead: "Record the signs that you looked for in the chart and did not find. Record documented signs under “Record signs of a day”.",
  windows: "Days around a urine culture:",
  window: "Culture of {{when}}",
  first: "First day reviewed",
  last: "Last day reviewed",
  readAt: "Chart read at",
  readAtHelp: "Days after the chart was read count as “Not reviewed”, even if the last day entered is later.",
  which: "Signs that the chart does not document",
  checkAll: "Check all signs with no entry on these days",
  whichHelp: "Check each sign that you looked for in the chart and did not find.",
  recordIt: "Record the chart review",
  done_one: "{{count}} sign was recorded as not documented.",
  done_other: "{{count}} signs were recorded as not documented.",
  heading: "Chart review of {{days}}",
  range: "{{first}} to {{last}}",
  read: "chart read {{when}}",
  each: "Each sign of this review",
});
