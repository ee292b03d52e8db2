import { catalogue } from "./catalogue.ts";

/** The infections of a month. */
export const infectionsText = catalogue("infections", {
  title: "Infections",
  lead: "Confirmed catheter-associated infections by location of attribution and date of event. What waits or cannot be told stands beside the count and is not in it.",
  toCases: "Work on the cultures",
  scroll: "Infections by ward; scrolls sideways",
  caption: "Each count opens to its events. Wards that nobody watches have no count.",
  ward: "Ward",
  cautis: "CAUTIs",
  waiting: "Waiting for confirmation",
  cannotTell: "Cannot be determined",
  pending: "Waiting for the laboratory",
  noneFound: "None found",
  notWatched: "not watched",
  opens: "CAUTIs of {{ward}}: show the events",
  eventsWhat: "the events",
  eventsCaption: "Events of {{ward}}. This view was recorded.",
  notShown: "not shown",
  notConfirmed: "nobody confirmed it yet",
  monthLasts: "once the month is over",
  confirmNone: "Confirm none found on {{ward}}",
  confirmed: "confirmed {{when}}",
  withdraw: "Withdraw it",
  csv: "Infections as CSV",
  cultures: "Urine cultures of catheters without any recorded sign",
  culturesWhat: "the cultures without a recorded sign",
  culturesScroll: "Urine cultures by ward; scrolls sideways",
  culturesCaption:
    "A culture that nobody had a recorded reason for finds bacteria that may need no treatment. This counts no infection.",
  culturesCsv: "Cultures as CSV",
});
