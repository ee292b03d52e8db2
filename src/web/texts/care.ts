import { catalogue } from "./catalogue.ts";

export const careText = catalogue("care", {
  title: "Maintenance bundle check",
  lead: "Check each item. An item that you did not check stays “not recorded”; it never counts as not kept.",
  at: "Checked at",
  item: "Source: {{source}}",
  all: "All kept",
  remark: "Comment",
  record: "Record bundle check",
  notLooked: "Not recorded",
  doneTitle: "Recorded: maintenance bundle check",
  doneLead: "This is the record for the chart.",
  urineTitle: "Urine output",
  urineAmount: "Amount",
  urineRecord: "Record the amount",
  urineDone: "Recorded: {{amount}} mL.",
});
