import type {
  readComparisonDocument as documentEndpoint,
  compareWards as endpoint,
  compareTwo as twoEndpoint,
} from "../../../shared/api/ward-comparisons.ts";
import type { Month } from "../../../shared/day.ts";
import type { InputOf, OutputOf } from "../../../shared/endpoint.ts";
import { defaultLimits } from "../../../shared/month-report.ts";
import {
  cautionsOfTests,
  compareTwoWards,
  type Side,
  type TestOfTwo,
} from "../../domain/comparison/compare-two-wards.ts";
import { cautionsOf, chartsOf, comparisonSources } from "../../domain/comparison/compare-wards.ts";
import { comparisonDocument } from "../../domain/comparison/comparison-document.ts";
import { type ComparedWard, level, per, totalsOf, withoutRate } from "../../domain/comparison/comparison-facts.ts";
import { yearUpTo } from "../../domain/comparison/period.ts";
import type { Ratio } from "../../domain/counting/ratio.ts";
import { utilization } from "../../domain/counting/utilization.ts";
import { monthDays } from "../../domain/days/month.ts";
import { zoneNamed } from "../../domain/days/zone.ts";
import { rateWithLimits } from "../../domain/statistics/rate-with-limits.ts";
import { wilsonLimits } from "../../domain/statistics/wilson-limits.ts";
import type { Act } from "../act.ts";
import { type Reach, reachOf } from "../reach.ts";
import { zoneOfFacility } from "../settings/find-facility.ts";
import { censusTaken } from "./census-taken.ts";
import { predictedInfections } from "./predicted-infections.ts";
import { readComparison } from "./read-comparison.ts";

type Answer = OutputOf<typeof endpoint>;
type Figure = Answer["wards"][number]["rate"];

/**
 * Wards of like type over a period, as figures and charts, without any patient. Wards that the person may not open are
 * named without their number. Refuses `in-the-future`, `period-impossible`, `ward-unknown` and `ward-type-unknown`.
 */
export async function compareWards(act: Act, input: InputOf<typeof endpoint>): Promise<Answer> {
  const asked = await askedOf(act, input);
  const { facts, types } = await readComparison(act, asked);
  const opens = reachOf(act.actor, "see-counts");
  return {
    ...{ ...asked, asOf: new Date(act.now).toISOString(), types: [...types] },
    wards: facts.wards.map((one) => wardAnswer(one, opens)),
    ...{ charts: chartsOf(facts), cautions: cautionsOf(facts), sources: comparisonSources },
  };
}

/** {@link compareWards} as a document. */
export async function readComparisonDocument(
  act: Act,
  input: InputOf<typeof documentEndpoint>,
): Promise<OutputOf<typeof documentEndpoint>> {
  const { facts } = await readComparison(act, await askedOf(act, input));
  return {
    document: comparisonDocument(
      facts,
      facts.wards.map((ward) => wardAnswer(ward, null)),
    ),
  };
}

/** What is compared, with the usual period where none is named. */
async function askedOf(act: Act, { from, to, type, ward }: InputOf<typeof endpoint>) {
  const usual = yearUpTo(zoneNamed(await zoneOfFacility(act.store, act.actor)).dayOf(act.now));
  const last = to ?? usual.to;
  await censusTaken(act, monthDays(last).first, "/to");
  return { from: from ?? yearUpTo(monthDays(last).first).from, to: last, type: type ?? null, ward: ward ?? null };
}

function wardAnswer(ward: ComparedWard, opens: Reach | null): Answer["wards"][number] {
  const totals = totalsOf(ward.months);
  const { patientDays, catheterDays, watchedDays, infections, open } = totals;
  const mayOpen = opens !== null && (opens.wardIds?.includes(ward.wardId) ?? true);
  return {
    ...{ wardId: mayOpen ? ward.wardId : null, code: ward.code, name: ward.name, type: ward.type },
    ...{ patientDays, catheterDays, watchedDays, infections, open, note: ward.notes.join(" ") },
    rate: rateFigure(totals),
    utilization: figureOf(
      utilization({ patientDays, catheterDays }),
      wilsonLimits({ part: catheterDays, whole: patientDays, level }),
    ),
  };
}

function rateFigure(totals: ReturnType<typeof totalsOf>): Figure {
  const missing = withoutRate(totals);
  if (missing !== null) return { value: null, lower: null, upper: null, reason: missing };
  const { infections, watchedDays: days } = totals;
  const found = rateWithLimits({ events: infections ?? 0, days, per, level, by: defaultLimits });
  return figureOf(found.rate, found);
}

function figureOf(value: Ratio, { lower, upper }: { lower: Ratio; upper: Ratio }): Figure {
  const reason = [value, lower, upper].find((one) => one.value === null);
  return {
    ...{ value: value.value, lower: lower.value, upper: upper.value },
    reason: reason?.value === null ? reason.reason : null,
  };
}

/** Two wards, or two periods of one, tested. Refuses `in-the-future`, `period-impossible` and `ward-unknown`. */
export async function compareTwo(act: Act, input: InputOf<typeof twoEndpoint>): Promise<OutputOf<typeof twoEndpoint>> {
  const { first, firstFrom, firstTo, second, secondFrom, secondTo } = input;
  await censusTaken(act, monthDays(firstTo).first, "/firstTo");
  await censusTaken(act, monthDays(secondTo).first, "/secondTo");
  const one = await sideOf(act, { ward: first, from: firstFrom, to: firstTo }, "first");
  const other = await sideOf(act, { ward: second, from: secondFrom, to: secondTo }, "second");
  return {
    first: sideAnswer(one),
    second: sideAnswer(other),
    tests: compareTwoWards(one, other).map(testAnswer),
    cautions: cautionsOfTests,
  };
}

async function sideOf(
  act: Act,
  asked: { ward: string; from: Month; to: Month },
  field: "first" | "second",
): Promise<Side> {
  const pointers = { from: `/${field}From`, ward: `/${field}` };
  const { facts } = await readComparison(act, { ...asked, type: null, alone: true, pointers });
  const { chosen, months } = facts;
  if (!chosen) throw new Error("a side of a test is one ward");
  const predicted = await predictedInfections(act, chosen);
  return { code: chosen.code, months, predicted, ...totalsOf(chosen.months) };
}

function sideAnswer({ code, months, infections, open, watchedDays, patientDays, predicted }: Side) {
  const [from, to] = [months[0], months.at(-1)];
  if (from === undefined || to === undefined) throw new Error("a side of a test has no month");
  return {
    ...{ code, from, to, infections, open, patientDays },
    catheterDays: watchedDays,
    predicted: predicted.value,
  };
}

function testAnswer({ what, first, second, comparison, method, sentence }: TestOfTwo) {
  const { ratio, lower, upper, p } = comparison;
  return { ...{ what, first, second, method, sentence, p: p.value }, ratio: figureOf(ratio, { lower, upper }) };
}
