import { catalogue } from "./catalogue.ts";

export const removalText = catalogue("removal", {
  title: "Record a removal",
  caution:
    "The tool records a removal that took place. Whether to remove is decided by the unit's policy, the prescriber's order and your licensed practice.",
  when: "When was it removed?",
  atTime: "At a known time",
  foundOut: "Found out: nobody saw it come out",
  removedAt: "Removed at",
  after: "Still in place at",
  before: "Gone at",
  balloon: "Drawn out of the balloon",
  balloonHelp: "{{amount}} mL were put in.",
  intact: "The catheter came out whole",
  reason: "Why it came out",
  remark: "Remark",
  record: "Record the removal",
  doneTitle: "Recorded: it is out",
  doneLead: "This is the record for the chart. What was not recorded is named as such.",
  out: "Removed",
  outBetween: "between {{after}} and {{before}}",
  alreadyOut: "This catheter's removal is recorded already.",
});
