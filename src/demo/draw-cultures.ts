import type { SpecimenKind, SpecimenStatus } from "../../shared/culture-words.ts";
import { type DayNumber, dayMs, type Instant } from "../domain/days/day-number.ts";
import type { Zone } from "../domain/days/zone.ts";
import { type Course, type DemoCatheter, legAt } from "./course.ts";
import type { Draw } from "./draw.ts";
import type { DemoHospital } from "./hospital.ts";

/** Which signs somebody recorded around a culture: a fever, tenderness, that none was there, or nothing at all. */
export type SignsFound = "fever" | "tenderness" | "none" | "unrecorded";

/** An invented patient's culture, with the signs of its day and whether somebody decided about it. */
export interface DemoCulture {
  readonly stay: string;
  readonly kind: SpecimenKind;
  readonly at: Instant;
  readonly status: SpecimenStatus;
  /** Names and counts as a laboratory writes them; empty: no growth. */
  readonly grew: readonly (readonly [name: string, count: string | null])[];
  readonly signs: SignsFound;
  /** Somebody confirmed it five days later, or disagreed; `null`: nobody has decided. */
  readonly decision: "confirmation" | "disagreement" | null;
}

/** What grows from catheters, with its share among positive cultures. From memory of published lists, rounded. */
const pathogens: readonly (readonly [string, number])[] = [
  ["Escherichia coli", 0.36],
  ["Klebsiella pneumoniae", 0.17],
  ["Pseudomonas aeruginosa", 0.16],
  ["Enterococcus faecalis", 0.15],
  ["Proteus mirabilis", 0.09],
  ["Enterobacter cloacae", 0.07],
];

/** The chance of a culture on each day from the third day of a catheter on. Invented. */
const culturesADay = 1 / 60;
/** Nobody has decided yet about cultures of the last days. */
const undecidedDays = 20;

/**
 * Urine cultures of patients with a catheter over the whole time of the demo. About one event in 1000 catheter-days comes
 * of them: near the pooled mean rates of CDC's data summary for 2013 (Dudeck et al., Am J Infect Control
 * 2015;43:206-221), from memory.
 */
export function drawCultures(draw: Draw, { courses }: Pick<DemoHospital, "courses">, zone: Zone): DemoCulture[] {
  const last = Math.max(...courses.flatMap(({ legs }) => legs.map(({ from }) => from)));
  return courses
    .filter(({ stay }) => !stay.startsWith("SX-"))
    .flatMap((course) => course.catheters.flatMap((catheter) => culturesOf(draw, { course, catheter, zone, last })));
}

function culturesOf(
  draw: Draw,
  { course, catheter, zone, last }: { course: Course; catheter: DemoCatheter; zone: Zone; last: Instant },
): DemoCulture[] {
  if (catheter.kind !== "indwelling-urethral") return [];
  const first = zone.dayOf(catheter.start) + 2;
  const end = Math.min(catheter.gone, catheter.removed ?? Number.POSITIVE_INFINITY, last);
  const cultures: DemoCulture[] = [];
  for (let day: DayNumber = first; day <= zone.dayOf(end); day++) {
    if (!draw.chance(culturesADay)) continue;
    const at = zone.firstInstantFrom(day * dayMs + draw.whole(5 * 60, 11 * 60) * 60_000);
    const culture = drawCulture(draw, { stay: course.stay, at, isOld: at < last - undecidedDays * dayMs });
    const leg = legAt(course.legs, at);
    if (at < end && leg?.ward.setting === "inpatient") cultures.push(culture);
  }
  return cultures;
}

function drawCulture(draw: Draw, said: { stay: string; at: Instant; isOld: boolean }): DemoCulture {
  const { stay, at, isOld } = said;
  const what = draw.fraction();
  const found = draw.fraction();
  const name = chosen(draw.fraction(), pathogens);
  // A category below the limit of the definitions: such a culture closes automatically.
  const isLow = !draw.chance(0.8);
  const disagrees = draw.chance(0.06);
  const base = { stay, kind: "urine", at, status: "final", decision: null } as const;
  if (what < 0.35) return { ...base, grew: [], signs: "none" };
  if (what < 0.5) return { ...base, grew: [["Mixed flora", null]], signs: "none" };
  if (what < 0.55) return { ...base, grew: [["Candida albicans", ">100000"]], signs: "none" };
  const signs = found < 0.35 ? "fever" : found < 0.9 ? "none" : "unrecorded";
  const decision = !isOld || isLow ? null : disagrees ? "disagreement" : "confirmation";
  return { ...base, grew: [[name, isLow ? "10,000-50,000" : ">100000"]], signs, decision };
}

function chosen(at: number, list: readonly (readonly [string, number])[]): string {
  let sum = 0;
  for (const [name, share] of list) {
    sum += share;
    if (at < sum) return name;
  }
  return list[0]?.[0] ?? "";
}
