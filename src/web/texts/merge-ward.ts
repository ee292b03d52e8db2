import { catalogue } from "./catalogue.ts";

export const mergeWardText = catalogue("mergeWard", {
  summary: "Merge this unit, or mark it as entered in error",
  merge: "Merge into another unit",
  mergeLead:
    "Stays, counts and surveillance move to the other unit, and the days of both are counted again. A signed month shows the difference.",
  into: "Unit",
  choose: "Choose",
  mergeRecord: "Merge this unit",
  void: "Mark as entered in error",
  voidLead: "A unit without any entry can be marked as entered in error. Its code is free again.",
  voidRecord: "Mark the unit as entered in error",
  reason: "Reason",
  merged: "Units merged into this one",
  mergedLine: "{{code}}, merged by {{who}}, {{when}}.",
});
