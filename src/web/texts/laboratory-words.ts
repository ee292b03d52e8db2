import { countChoices } from "../../../shared/laboratory-words.ts";
import { catalogue } from "./catalogue.ts";

export const countChoiceText = catalogue("countChoices", countChoices);
export const wordsText = catalogue("laboratoryWords", {
  title: "Laboratory words",
  lead: "Wordings of the laboratory that are not read automatically. A choice applies to every specimen with the wording, recorded from then on.",
  what: "the laboratory words",
  waiting: "Wordings to choose",
  chosen: "Choices of this facility",
  noneWaiting: "No wording waits for a choice.",
  noneChosen: "No choice is stored yet.",
  organism: "Organism",
  count: "Count",
  specimens: "Specimens",
  withdrawn: "No choice",
  open: "Choose…",
  choiceOf: "Meaning of {{wording}}",
  proposal: "One letter away from {{name}}",
  save: "Save choice",
  saved: "The choice is saved. It applies to specimens recorded from now on.",
  by: "Chosen by",
  past: "Past specimens",
  pastYes: "included",
  pastNo: "not included",
  pastPartly: "{{determined}} of {{specimens}} determined",
  applyOpen: "Past specimens",
  apply: "Apply to past specimens",
  applyOf: "Apply the choice for {{wording}} to past specimens",
  applyOn: "Continue",
  applyHelp:
    "This repeats the determination of {{count}} specimens. If you leave this page, the rest is determined when cultures are next listed or a month is opened. Signed months show any difference.",
  applying: "Past specimens: {{determined}} of {{specimens}} determined.",
  applied: "Applied to past specimens. {{changed}} determinations changed.",
  change: "Change the choice",
  export: "Export as CSV",
  table: "Import choices",
  tableHelp:
    "A CSV file as exported, with the columns “column”, “wording” and “choice”. Either all rows are stored or none.",
  tableText: "Rows",
  import: "Import choices",
  imported: "New choices saved: {{count}}.",
});
