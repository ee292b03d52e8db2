import { absenceKinds, catheterKinds, wardSettings } from "../../shared/vocabulary.ts";
import { closedList } from "./cells/closed-list.ts";
import { day } from "./cells/day.ts";
import { identifier } from "./cells/identifier.ts";
import { localTime } from "./cells/local-time.ts";
import { text } from "./cells/text.ts";
import { wholeNumber } from "./cells/whole-number.ts";
import { yesNo } from "./cells/yes-no.ts";
import { type Columns, type Layout, optional, optionalOr, required } from "./column.ts";

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
  sex: optional(text),
  admitted: optional(localTime),
  discharged: optional(localTime),
  disposition: optional(text),
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
  kind: optionalOr(closedList(catheterKinds), "indwelling-urethral"),
  inserted: optional(localTime),
  removed: optional(localTime),
  last_seen: optional(localTime),
  in_place_on_arrival: optional(yesNo),
  indication: optional(text),
  size_fr: optional(sizeFr),
  balloon_ml: optional(balloonMl),
});

const dailyCounts = layout("daily-counts.csv", {
  ward: required(identifier),
  day: required(day),
  patients: required(count),
  catheters: required(count),
});

/** The files that are read, in the order in which they are read whatever the order of the folder. */
export const layouts = [wards, stays, moves, catheters, dailyCounts] as const;

/** Names of files that have a meaning and are not read yet: a folder that holds them gets a notice. */
export const filesNotReadYet: readonly string[] = ["reviews.csv", "specimens.csv", "signs.csv"];

/** The layout of a file that is read. */
export type FileLayout = (typeof layouts)[number];

function layout<Name extends string, const C extends Columns>(name: Name, columns: C): Layout<Name, C> {
  return { name, columns };
}
