import { inserters, insertionPlaces } from "../../../shared/catheter-words.ts";
import { month } from "../../../shared/day.ts";
import type { BaselineNamed, InsertionCounts, MonthReport, WardFigures } from "../../../shared/month-report.ts";
import { words } from "../../../shared/vocabulary.ts";
import { dayText } from "../days/day-number.ts";
import { cautionsOf, countingSources } from "./cautions.ts";
import { level } from "./figure.ts";
import { figureCautions } from "./figure-cautions.ts";
import type { FigureFacts, NumberedBaseline, WardCatheters } from "./figure-facts.ts";
import { partFigures } from "./part-figures.ts";
import { partsOf, type WardPart } from "./parts.ts";

const sources = [
  ...countingSources,
  "Rates, SIR and SUR: CDC Patient Safety Component Manual, chapter 7, and the CDC's public statistical routines; withheld where fewer than 1.0 are predicted",
  "Population rate: Wright et al., Infect Control Hosp Epidemiol 2011;32:635-640. CAD: Soe et al., Infect Control Hosp Epidemiol 2015",
  "Limits of shares: Wilson, J Am Stat Assoc 1927;22:209-212. Time in place: Kaplan and Meier, J Am Stat Assoc 1958;53:457-481",
];

/** A month with every figure of each ward and of all: what is shown, printed, exported and signed; with what is missing from it. */
export function monthFigures(facts: FigureFacts, completeness: MonthReport["completeness"] = null): MonthReport {
  const { days, comparison } = facts;
  const { wards, total } = partsOf(facts);
  const first = dayText(days.first);
  return {
    month: month.parse(first.slice(0, 7)),
    facility: days.facility.name,
    first,
    last: dayText(days.last),
    asOf: new Date(days.asOf).toISOString(),
    level,
    limits: comparison.limits,
    baselines: { infections: named(comparison.infections), catheterDays: named(comparison.catheterDays) },
    goal: comparison.goal,
    wards: wards.map((ward) => wardFigures(ward, facts)),
    total: {
      figures: partFigures(total, comparison),
      insertions: insertionCounts(wards.flatMap(({ catheters }) => catheters.inserted)),
    },
    completeness,
    cautions: [...cautionsOf(days), ...figureCautions(facts)],
    sources,
  };
}

function wardFigures(ward: WardPart, { days, comparison }: FigureFacts): WardFigures {
  const { wardId, code, name, type, edition, nonDefault, predictions, catheters } = ward;
  const times = days.census.map(({ time }) => time).join(", ");
  const from = ward.inpatient === "partly" ? ", on the days on which it was a ward for inpatients" : "";
  return {
    ...{ wardId, code, name, type, edition },
    // Left out where there is none, so that the same month has the same text as in earlier versions.
    ...(nonDefault.length > 0 ? { nonDefaultReadings: [...nonDefault] } : {}),
    denominators: `Counted from the record of moves and catheters at the daily census (${times})${from}.`,
    predicted: predictions,
    figures: partFigures(ward.part, comparison),
    insertions: insertionCounts(catheters.inserted),
  };
}

/** Where and by whom, in the order of the closed lists, what nobody wrote down last. */
function insertionCounts(inserted: WardCatheters["inserted"]): InsertionCounts {
  const count = <Word extends string>(
    list: readonly Word[],
    of: (one: (typeof inserted)[number]) => Word | undefined,
  ) =>
    [...list, undefined]
      .map((word) => ({ word: word ?? null, count: inserted.filter((one) => of(one) === word).length }))
      .filter(({ count }) => count > 0);
  return {
    places: count(words(insertionPlaces), (one) => one.insertedIn).map(({ word, count }) => ({ place: word, count })),
    inserters: count(words(inserters), (one) => one.insertedBy).map(({ word, count }) => ({ inserter: word, count })),
  };
}

function named(one: NumberedBaseline | null): BaselineNamed | null {
  if (one === null) return null;
  const { name, source, year, definition, population, edition } = one.baseline.origin;
  return { baselineId: one.baselineId, name, source, year, definition, population, edition };
}
