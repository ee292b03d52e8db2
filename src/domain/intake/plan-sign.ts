import { type Fault, Problem, refuse } from "../../../shared/problems.ts";
import { instantOfDay, newSign, type RecordedSign, type SignText } from "../cultures/sign.ts";
import { signFaults } from "../cultures/sign-faults.ts";
import { revise, type Stay, stands } from "../timeline/timeline.ts";
import { cultureDayFaults } from "./culture-days.ts";
import { givesDayAlone } from "./day-alone.ts";
import type { LineOf } from "./intake-line.ts";
import type { LineMark } from "./outcome.ts";
import { made, notMadeHere, type Plan, type StepResult } from "./plan.ts";
import { stayByNumber } from "./plan-stay.ts";

type SignLine = LineOf<"signs.csv">;

/**
 * Applies a line of signs.csv: what was found of a sign on a day, or at a time, or a correction of what was recorded for
 * the same sign and time. A temperature is kept as it was measured.
 * Refuses `stay-unknown`, `line-contradicts`, `csv-cell-empty` without a finding and a value, and what a sign is refused
 * for that a person records; an unusual value is marked, because nobody is there to look at it again.
 */
export function planSign(plan: Plan, line: SignLine): StepResult | "unchanged" {
  const { values } = line;
  const stay = stayByNumber(plan.timeline, values.stay);
  if (!stay) return refuse("stay-unknown", "No stay has this number.", { pointer: "/stay" });
  const text = textOf(plan, line);
  const known = signLike(plan, text);
  const entry = known ? `sign ${known.id}` : null;
  if (known && (["finding", "otherCause", "lastDay"] as const).every((field) => known[field] === text[field])) {
    if (JSON.stringify(known.temperature) === JSON.stringify(text.temperature)) {
      made(plan, `sign ${known.id}`, line);
      return "unchanged";
    }
  }
  if (entry) notMadeHere(plan, entry);
  const marks = marksOf(plan, { text, isNew: !known });
  const sign = known ? revise(known, text) : newSign(writingOf(plan, stay), text);
  plan.cultures.signs.set(sign.id, sign);
  made(plan, `sign ${sign.id}`, line);
  return { timeline: plan.timeline, marks };
}

/** Remembers a line that was stored before as the one that told of its sign. */
export function recallSign(plan: Plan, line: SignLine): void {
  try {
    const known = signLike(plan, textOf(plan, line));
    if (known) made(plan, `sign ${known.id}`, line);
  } catch (error) {
    // What could be stored once can be refused by now, such as a time that the rules of its zone took away.
    if (!(error instanceof Problem)) throw error;
  }
}

/** A new sign is of the record that its stay was made for: a merge can then be undone exactly. */
function writingOf({ newId, care }: Plan, { patientId }: Stay) {
  return { id: newId(), patientId, writtenAt: care.now, writtenBy: care.personId };
}

function textOf({ care }: Plan, { values, marks }: SignLine): SignText {
  const { sign, day, time, present, value: temperature, other_cause, last_day: lastDay, reviewed: readAt } = values;
  const finding =
    present ??
    (temperature
      ? ("present" as const)
      : refuse("csv-cell-empty", "A sign without a value needs a yes or no.", { pointer: "/finding" }));
  const isDayAlone = givesDayAlone({ marks }, "time");
  const moment =
    time === null
      ? { at: null, marks: isDayAlone ? (["no-hour:at"] as const) : [] }
      : instantOfDay(day, time, { zone: care.zone, pointer: "/time" });
  return { sign, day, finding, temperature, otherCause: other_cause ?? false, lastDay, readAt, ...moment };
}

/** The sign that a line tells of. Each reading of a chart is another review, and no correction of what was found. */
function signLike({ cultures }: Plan, { sign, day, at, readAt }: SignText): RecordedSign | undefined {
  return [...cultures.signs.values()].find(
    (one) => stands(one) && one.sign === sign && one.day === day && one.at === at && one.readAt === readAt,
  );
}

/** The marks of a sign that can be stored; the faults of another are thrown. */
function marksOf(plan: Plan, { text, isNew }: { text: SignText; isNew: boolean }): LineMark[] {
  const { now, zone } = plan.care;
  const late: Fault[] =
    text.at !== null && text.at > now
      ? [{ code: "in-the-future", pointer: "/time", detail: "This time has not come yet." }]
      : [];
  const read: Fault[] =
    text.readAt !== null && text.readAt > now
      ? [{ code: "in-the-future", pointer: "/readAt", detail: "This time has not come yet." }]
      : [];
  const last = text.lastDay ?? text.day;
  const ofDay = isNew
    ? [
        ...cultureDayFaults(plan, text.day, "/day"),
        ...(last > text.day ? cultureDayFaults(plan, last, "/lastDay") : []),
      ]
    : [];
  const found = signFaults(text, { at: "", confirmed: [], zone });
  const unusual = found.filter(({ code }) => code === "unusual-value");
  const [first, ...more] = [
    ...(ofDay.length > 0 ? ofDay : late),
    ...read,
    ...found.filter((fault) => !unusual.includes(fault)),
  ];
  if (first) throw new Problem(first, ...more);
  return [
    ...(unusual.length > 0 ? (["unusual-value"] as const) : []),
    ...(text.marks.includes("repeated-hour:at") ? (["repeated-hour"] as const) : []),
  ];
}
