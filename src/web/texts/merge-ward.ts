import { catalogue } from "./catalogue.ts";

export const mergeWardText = catalogue("mergeWard", {
  summary: "Merge this unit, or mark it as entered in error",
  merge: "Merge into another unit",
  mergeLead:
    "Stays, counts and surveillance move to the other unit. The days of both units are counted again, and signed months show any difference. A merge cannot be undone.",
  into: "Unit to keep",
  choose: "Choose a unit",
  mergeRecord: "Merge this unit",
  void: "Mark as entered in error",
  voidLead: "A unit with no entries can be marked as entered in error. Its code can then be used again.",
  voidRecord: "Mark the unit as entered in error",
  reason: "Reason",
  merged: "Units merged into this one",
  mergedLine: "{{code}}, merged by {{who}}, {{when}}.",
});
