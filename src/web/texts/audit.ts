import { auditActions } from "../../../shared/audit-words.ts";
import { catalogue } from "./catalogue.ts";

export const actionText = catalogue("auditActions", auditActions);

export const auditText = catalogue("audit", {
  title: "Who did and saw what",
  ofPatient: "Who saw this patient's record",
  lead: "Every change and every view of a patient's record is here. This search is itself recorded.",
  person: "Person",
  action: "What",
  anybody: "Anyone",
  anything: "Anything",
  from: "From day",
  to: "To day",
  search: "Search",
  what: "the audit trail",
  none: "Nothing was found.",
  when: "When",
  patients: "Patients",
  waiting: "waiting",
  more: "Show older ones",
  count_one: "{{count}} patient",
  count_other: "{{count}} patients",
  verify: "Check the chain",
  verifyWhat: "whether the chain is whole",
  whole: "The chain is whole: {{sealed}} entries, {{waiting}} waiting.",
  broken: "The chain is broken at entry {{number}}: {{detail}}",
  head: "Keep this elsewhere. A shortened chain then no longer matches it: {{number}}:{{hash}}",
});
