import { catalogue } from "./catalogue.ts";

export const careText = catalogue("care", {
  title: "Care check",
  lead: "Look at each item. What you did not look at stays “not recorded”; it is never counted as not kept.",
  at: "Looked at",
  item: "Source: {{source}}",
  all: "All kept",
  remark: "Remark",
  record: "Record the care check",
  notLooked: "Not recorded",
  doneTitle: "Recorded: care check",
  doneLead: "This is the record for the chart.",
  urineTitle: "Urine output",
  urineAmount: "Amount",
  urineRecord: "Record the amount",
  urineDone: "Recorded: {{amount}} mL.",
});
