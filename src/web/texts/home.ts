import { catalogue } from "./catalogue.ts";

export const homeText = catalogue("home", {
  title: "Units now",
  what: "the units",
  cases: "Cultures to review",
  changedMonths: "Changed after signing",
  changedUnits: "Units: {{wards}}.",
  changedTimes_one: "{{count}} change.",
  changedTimes_other: "{{count}} changes.",
  changedLast: "Latest: {{what}}, {{when}}.",
  asOf: "As of {{when}}.",
  none: "Your role shows no units.",
  noneHow: "Units come with the first import or from the settings. An administrator assigns people to them.",
  noSetting: "The setting of this unit is not recorded: its days do not count.",
  noFigures: "Your role shows no unit figures. The pages that it opens are listed above.",
  patientsCount_one: "{{count}} patient",
  patientsCount_other: "{{count}} patients",
  cathetersCount_one: "{{count}} catheter",
  cathetersCount_other: "{{count}} catheters",
  toRound: "Round of {{ward}}",
  mark: "{{count}} {{words}}",
  overdue: "overdue",
  pastThreshold: "past threshold",
  doubtful: "not confirmed",
  due: "due",
  nothingToDo: "Nothing is due.",
  month: "{{month}} so far",
  monthWhat: "the figures of the month so far",
  monthOpen: "Open the month",
  monthNone: "No census has been taken in this month yet.",
  patientDays: "Patient-days",
  catheterDays: "Catheter-days",
  hintTitle: "Where to begin",
  hintBedside:
    "Choose your unit to see its round, the most urgent work first. One touch records that a catheter is still needed.",
  hintPrevention:
    "These are the units as they are now. The month shows what they add up to; every figure opens to the rows behind it.",
  hintManager:
    "These are your units as they are now. The month compares them; your role shows unit days and no patients.",
  hintAdministrator:
    "Settings hold the policy, the units and the census. Import takes files of records. Audit shows who did and saw what.",
});
