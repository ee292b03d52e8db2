import type { CatheterSpan } from "./catheter-span.ts";
import type { Moment, Removal } from "./surveillance-timeline.ts";
import type { World } from "./world.ts";

/**
 * Whether an indwelling catheter was in place at a moment: `part` where it was for a part of the day and nobody can say
 * on which side the moment lies.
 */
export function catheterAt({ catheters }: Pick<World, "catheters">, when: Moment): "in" | "out" | "part" {
  const answers = catheters.map((span) => spanAt(span, when));
  if (answers.includes("in")) return "in";
  return answers.includes("part") ? "part" : "out";
}

function spanAt({ first, last, time }: CatheterSpan, { day, at }: Moment): "in" | "out" | "part" {
  if (day < first || day > last) return "out";
  const fromStart = day > first || time.start === null ? "in" : side(time.start.at, at, "after");
  // Past the last day on which it was seen in place nobody knows more than that it may have been.
  const toEnd = day < last || time.end === null ? "in" : sideOfEnd(time.end, { day: last, at });
  if (fromStart === "out" || toEnd === "out") return "out";
  return fromStart === "in" && toEnd === "in" ? "in" : "part";
}

/** Of the last day of a span; of a removal without an instant, what the two instants around it leave open. */
function sideOfEnd({ day, at: removedAt, between }: Removal, { day: last, at }: Moment): "in" | "out" | "part" {
  if (between !== undefined && at !== null) {
    if (at <= between.after) return "in";
    return at >= between.before ? "out" : "part";
  }
  return day === last ? side(removedAt, at, "before") : "part";
}

function side(bound: number | null, at: number | null, wanted: "after" | "before"): "in" | "out" | "part" {
  if (bound === null || at === null) return "part";
  return (wanted === "after" ? at >= bound : at < bound) ? "in" : "out";
}
