import type { Moment } from "./surveillance-timeline.ts";
import type { CatheterSpan, World } from "./world.ts";

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
  const toEnd =
    day < last || time.end === null ? "in" : time.end.day === last ? side(time.end.at, at, "before") : "part";
  if (fromStart === "out" || toEnd === "out") return "out";
  return fromStart === "in" && toEnd === "in" ? "in" : "part";
}

function side(bound: number | null, at: number | null, wanted: "after" | "before"): "in" | "out" | "part" {
  if (bound === null || at === null) return "part";
  return (wanted === "after" ? at >= bound : at < bound) ? "in" : "out";
}
