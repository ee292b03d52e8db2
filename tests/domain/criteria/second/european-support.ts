import type { Story, StorySpecimen } from "../../../../src/domain/criteria/story.ts";
import { europeanCounts, europeanOrganisms, isKnown } from "./european-grown.ts";

/** One way in which a line of a report can come out: null is nothing that matters. */
type Line = { readonly name: string; readonly perMl: number } | null;

const uropathogens = Object.keys(europeanOrganisms).filter((name) => europeanOrganisms[name]?.uropathogen === true);

/** Whether UTI-B is supported between two days: every answer that the reports can still come to. */
export function possibleSupport(story: Story, from: number, to: number): ReadonlySet<boolean> {
  const isIn = (day: number) => day >= from && day <= to && isKnown(day, story);
  const findings = (story.findings ?? []).filter(([day]) => isIn(day)).map(([, finding]) => finding);
  if (findings.some((finding) => finding !== "effective-antimicrobial")) return new Set([true]);
  const cultures = (story.urine ?? []).filter(({ day, method = "culture", status = "final" }) => {
    return isIn(day) && method === "culture" && status !== "withdrawn";
  });
  const answers = cultures.flatMap((a, i) => cultures.slice(i + 1).map((b) => repeated(a, b)));
  if (findings.length > 0) answers.push(...cultures.map(few));
  if (answers.some((one) => one.size === 1 && one.has(true))) return new Set([true]);
  return new Set([false, ...(answers.some((one) => one.has(true)) ? [true] : [])]);
}

function isFinal({ status = "final" }: StorySpecimen): boolean {
  return status === "final" || status === "corrected";
}

/** The lines of a report, each with all that it can come to. A report that is not final can still say anything. */
function linesOf(one: StorySpecimen): Line[][] {
  if (!isFinal(one)) {
    const named = uropathogens.flatMap((name) => [1000, 500_000].map((perMl) => ({ name, perMl })));
    return [[null, ...named]];
  }
  return (one.grew ?? []).map(([name, count]) => {
    const numbers = europeanCounts[count ?? ""] ?? [];
    const kind = europeanOrganisms[name];
    const isOfUse = kind?.uropathogen !== false;
    const names = kind?.is === "unknown" ? [name, ...uropathogens] : [name];
    const lines: Line[] = isOfUse ? names.flatMap((each) => numbers.map((perMl) => ({ name: each, perMl }))) : [null];
    return kind?.uropathogen === null ? [null, ...lines] : lines;
  });
}

function repeated(a: StorySpecimen, b: StorySpecimen): ReadonlySet<boolean> {
  const pairs = linesOf(a).flatMap((one) => linesOf(b).map((other) => possibleOf(one, other)));
  if (pairs.some((pair) => !pair.has(false))) return new Set([true]);
  return new Set([false, ...(pairs.some((pair) => pair.has(true)) ? [true] : [])]);
}

function possibleOf(one: readonly Line[], other: readonly Line[]): Set<boolean> {
  return new Set(one.flatMap((x) => other.map((y) => isSameEnough(x, y))));
}

function isSameEnough(x: Line, y: Line): boolean {
  if (x === null || y === null || x.perMl < 100 || y.perMl < 100) return false;
  return x.name === y.name || (europeanOrganisms[x.name]?.same.includes(y.name) ?? false);
}

/** A single uropathogen, not more than 100,000 per milliliter of it on any line. */
function few(one: StorySpecimen): ReadonlySet<boolean> {
  if (!isFinal(one)) return new Set([true, false]);
  if (new Set((one.grew ?? []).map(([name]) => name)).size !== 1) return new Set([false]);
  const lines = linesOf(one).map((options) => new Set(options.map((x) => x !== null && x.perMl <= 100_000)));
  if (lines.some((line) => !line.has(true))) return new Set([false]);
  return new Set([true, ...(lines.some((line) => line.has(false)) ? [false] : [])]);
}
