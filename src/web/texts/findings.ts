import { catalogue } from "./catalogue.ts";

/** What was found beside cultures and signs. */
export const findingsText = catalogue("findings", {
  title: "Other findings, newest day first",
  none: "Nothing else was recorded: no evidence in urine beside cultures, no death, no support for organ donation.",
  record: "Record another finding",
  lead: "Evidence in urine counts where the European edition is in force. A death or support for organ donation keeps later specimens from being counted where an edition says so.",
  done: "The finding was recorded.",
  what: "What",
  present: "Was it so?",
  isSo: "Yes",
  isNotSo: "Looked for, and not so",
  cells: "White blood cells per mm³",
  cellsHelp: "If the laboratory gave a number; may stay empty.",
  cellsSaid: "{{cells}} per mm³",
  time: "Time of day",
  timeHelp: "HH:MM, if the hour is known.",
  recordIt: "Record this finding",
});
