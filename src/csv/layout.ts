import { indications, reviewOutcomes } from "../../shared/catheter-words.ts";
import { organismGroups, signNames, specimenMethods, specimenStatuses } from "../../shared/culture-words.ts";
import { absenceKinds, catheterKinds, dispositions, sexes, wardSettings } from "../../shared/vocabulary.ts";
import { closedList } from "./cells/closed-list.ts";
import { day } from "./cells/day.ts";
import { dayOrTime } from "./cells/day-or-time.ts";
import { finding } from "./cells/finding.ts";
import { identifier } from "./cells/identifier.ts";
import { localTime } from "./cells/local-time.ts";
import { specimenKindCell } from "./cells/specimen-kind.ts";
import { temperature } from "./cells/temperature.ts";
import { text } from "./cells/text.ts";
import { timeOfDay } from "./cells/time-of-day.ts";
import { wholeNumber } from "./cells/whole-number.ts";
import { yesNo } from "./cells/yes-no.ts";
import { type Columns, type Layout, optional, optionalOr, required } from "./column.ts";
import { catheterKindWords, dispositionWords, indicationWords, sexWords } from "./other-words.ts";

/** Wider than any ward; a larger number is a slip of the pen or another column's value (common practice). */
const patientsMost = 9_999;
/** Wider than the tubes and balloons on the market, in Charrière (French) and milliliters (common practice). */
const sizeFr = wholeNumber({ least: 1, most: 40 });
const balloonMl = wholeNumber({ least: 0, most: 200 });
const count = wholeNumber({ least: 0, most: patientsMost });

const wards = layout("wards.csv", {
  ward: required(identifier),
  name: optional(text),
  type: optional(text),
  setting: optional(closedList(wardSettings)),
  beds: optional(count),
  opened: optional(day),
  closed: optional(day),
});

const stays = layout("stays.csv", {
  stay: required(identifier),
  patient: required(identifier),
  birth_date: optional(day),
  sex: optional(closedList(sexes, sexWords)),
  admitted: optional(localTime),
  discharged: optional(localTime),
  disposition: optional(closedList(dispositions, dispositionWords)),
});

const moves = layout("moves.csv", {
  stay: required(identifier),
  patient: required(identifier),
  ward: required(identifier),
  bed: optional(identifier),
  from: required(localTime),
  to: optional(localTime),
  absence: optional(closedList(absenceKinds)),
});

const catheters = layout("catheters.csv", {
  stay: required(identifier),
  catheter: optional(identifier),
  kind: optionalOr(closedList(catheterKinds, catheterKindWords), "indwelling-urethral"),
  inserted: optional(localTime),
  removed: optional(localTime),
  last_seen: optional(localTime),
  in_place_on_arrival: optional(yesNo),
  indication: optional(closedList(indications, indicationWords)),
  size_fr: optional(sizeFr),
  balloon_ml: optional(balloonMl),
});

/** A line names its catheter, or its stay. */
const reviews = layout("reviews.csv", {
  catheter: optional(identifier),
  stay: optional(identifier),
  day: required(dayOrTime),
  outcome: required(closedList(reviewOutcomes)),
  indication: optional(text),
  note: optional(text),
  written: optional(localTime),
});

const dailyCounts = layout("daily-counts.csv", {
  ward: required(identifier),
  day: required(day),
  patients: required(count),
  catheters: required(count),
});

/** One line an organism, or that nothing grew; an empty organism is no growth only where the source says so. */
const specimens = layout("specimens.csv", {
  stay: required(identifier),
  specimen: optional(identifier),
  kind: required(specimenKindCell),
  collected: required(localTime),
  method: optionalOr(closedList(specimenMethods), "culture"),
  status: optionalOr(closedList(specimenStatuses), "final"),
  organism: optional(text),
  group: optional(closedList(organismGroups)),
  count: optional(text),
});

const signs = layout("signs.csv", {
  stay: required(identifier),
  day: required(day),
  time: optional(timeOfDay),
  sign: required(closedList(signNames)),
  present: optional(finding),
  value: optional(temperature),
  other_cause: optional(yesNo),
  last_day: optional(day),
  reviewed: optional(localTime),
});

/** The files that are read, in the order in which they are read whatever the order of the folder. */
export const layouts = [wards, stays, moves, catheters, reviews, specimens, signs, dailyCounts] as const;

/** The layout of a file that is read. */
export type FileLayout = (typeof layouts)[number];

function layout<Name extends string, const C extends Columns>(name: Name, columns: C): Layout<Name, C> {
  return { name, columns };
}
