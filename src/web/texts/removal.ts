import { catalogue } from "./catalogue.ts";

export const removalText = catalogue("removal", {
  title: "Record removal",
  caution:
    "The tool records a removal that took place. Whether to remove is decided by the unit's policy, the provider's order and your licensed practice.",
  when: "When was it removed?",
  atTime: "At a known time",
  foundOut: "Found removed, time not known",
  removedAt: "Removed at",
  after: "Last seen in place",
  before: "First noted absent",
  balloon: "Balloon volume removed",
  balloonHelp: "Balloon volume at insertion: {{amount}} mL.",
  intact: "Catheter intact on removal",
  reason: "Removal reason",
  remark: "Comment",
  record: "Record removal",
  doneTitle: "Recorded: removal",
  doneLead: "This is the record for the chart. What was not recorded is named as such.",
  out: "Removed",
  outBetween: "between {{after}} and {{before}}",
  alreadyOut: "This catheter's removal is recorded already.",
});
