import { catalogue } from "./catalogue.ts";

/** What another edition would say of cultures past. */
export const editionDifferencesText = catalogue("edition-differences", {
  heading: "What another edition would say",
  lead: "Compares the determinations of this edition and another one for the urine cultures of some days, whichever edition their units use. Nothing changes; your view is recorded.",
  form: "Editions and days to compare",
  other: "Other edition",
  first: "Collected from",
  last: "Collected to",
  compare: "Compare",
  what: "the differences",
  none_one: "{{count}} culture was compared: both editions say the same of it.",
  none_other: "{{count}} cultures were compared: both editions say the same of each.",
  some_one: "{{count}} of {{compared}} compared would be determined otherwise.",
  some_other: "{{count}} of {{compared}} compared would be determined otherwise.",
  culture: "Culture",
  ofDay: "Culture of {{day}}",
  findingOfDay: "Finding of {{day}}",
  notJudged: "Not judged by this edition",
});
