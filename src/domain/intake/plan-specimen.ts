import type { SpecimenStatus } from "../../../shared/culture-words.ts";
import { type Fault, Problem, refuse } from "../../../shared/problems.ts";
import { noWords } from "../cultures/laboratory-words.ts";
import {
  countOf,
  identityOf,
  newSpecimen,
  type RecordedOrganism,
  type RecordedSpecimen,
} from "../cultures/specimen.ts";
import { resultFaults } from "../cultures/specimen-faults.ts";
import { markedAnew, revise, type Stay, stands } from "../timeline/timeline.ts";
import { cultureDayFaults } from "./culture-days.ts";
import { isTimeOf, timeOf } from "./day-alone.ts";
import type { LineOf } from "./intake-line.ts";
import type { LineMark } from "./outcome.ts";
import { entryMarks, made, notMadeHere, type Plan, type StepResult } from "./plan.ts";
import { stayByNumber } from "./plan-stay.ts";

type SpecimenLine = LineOf<"specimens.csv">;
type Values = SpecimenLine["values"];

/** Reports follow one another in this order; a later one says the whole result anew. Common practice. */
const reportOrder: readonly SpecimenStatus[] = ["pending", "preliminary", "final", "corrected", "withdrawn"];

/** How far the report of a line is. */
export function reportRank({ status }: Pick<Values, "status">): number {
  return reportOrder.indexOf(status);
}

/**
 * Applies a line of specimens.csv: an organism of a specimen, or that nothing grew. A report that goes further than the
 * recorded one takes its place, organisms and all; one of the same status adds to it; an older one changes nothing.
 * Refuses `stay-unknown`, `specimen-unclear`, `line-contradicts`, `result-contradicts`, and what a specimen is refused
 * for that a person records.
 */
export function planSpecimen(plan: Plan, line: SpecimenLine): StepResult | "unchanged" {
  const { values } = line;
  const stay = stayByNumber(plan.timeline, values.stay);
  if (!stay) return refuse("stay-unknown", "No stay has this number.", { pointer: "/stay" });
  const known = specimenOfLine(plan, line);
  if (known && reportRank(values) < reportRank(known)) return { timeline: plan.timeline, marks: ["report-older"] };
  const specimen = known ? overKnown(plan, line, known) : newFrom(plan, line, stay);
  const isSame = known !== undefined && specimen === known;
  if (!isSame) refuseFaults(plan, { specimen, known });
  plan.cultures.specimens.set(specimen.id, specimen);
  tell(plan, line, specimen);
  return isSame ? "unchanged" : { timeline: plan.timeline, marks: marksOf(plan, values) };
}

/** Remembers a line that was stored before as the one that told of its specimen. */
export function recallSpecimen(plan: Plan, line: SpecimenLine): void {
  const found = specimensLike(plan, line);
  if (found[0] && found.length === 1) tell(plan, line, found[0]);
}

function tell(plan: Plan, line: SpecimenLine, specimen: RecordedSpecimen): void {
  made(plan, `specimen ${specimen.id}`, line);
  const organism = organismOf({ ...specimen, organisms: grownOf(specimen) }, line.values.organism);
  made(plan, organism ? `organism ${organism.id}` : noGrowthOf(specimen), line);
}

function noGrowthOf({ id }: RecordedSpecimen): string {
  return `no growth of specimen ${id}`;
}

/** The specimen of that number; without a number the one of that kind and time. A number can still join it. */
function specimensLike(plan: Plan, line: SpecimenLine): RecordedSpecimen[] {
  const { specimen: number, kind } = line.values;
  const standing = [...plan.cultures.specimens.values()].filter(stands);
  const numbered = number === null ? [] : standing.filter((one) => one.number === number);
  if (numbered.length > 0) return numbered;
  const alike = standing.filter(
    (one) => one.kind === kind && isTimeOf(plan, { line, column: "collected" }, one.collectedAt),
  );
  return number === null ? alike : alike.filter((one) => one.number === null);
}

function specimenOfLine(plan: Plan, line: SpecimenLine): RecordedSpecimen | undefined {
  const found = specimensLike(plan, line);
  if (found.length < 2) return found[0];
  const pointer = line.values.specimen === null ? "/collectedAt" : "/specimen";
  return refuse("specimen-unclear", `The record has ${found.length} specimens that it can be.`, { pointer });
}

/** A new specimen, for the record that its stay was made for: a merge can then be undone exactly. */
function newFrom(plan: Plan, line: SpecimenLine, { patientId }: Stay): RecordedSpecimen {
  const { specimen: number, kind, collected: collectedAt, method, status } = line.values;
  const { now: writtenAt, personId: writtenBy } = plan.care;
  const writing = { id: plan.newId(), patientId, writtenAt, writtenBy };
  const text = { kind, collectedAt, method, status, number, organisms: [], marks: entryMarks(line) };
  const specimen = newSpecimen(writing, text, plan.newId);
  return { ...specimen, organisms: grownIn(plan, specimen, line.values) };
}

function overKnown(plan: Plan, line: SpecimenLine, known: RecordedSpecimen): RecordedSpecimen {
  const { values } = line;
  const told = plan.madeBy.has(`specimen ${known.id}`);
  const isFurther = reportRank(values) > reportRank(known) || (values.status === "corrected" && !told);
  const { kind, collected, method, status } = values;
  const collectedAt = timeOf(plan, { line, column: "collected" }, { recorded: known.collectedAt }) ?? collected;
  const said = { kind, collectedAt, method, status, number: values.specimen ?? known.number };
  const moved = (["kind", "collectedAt", "method", "number"] as const).some((field) => known[field] !== said[field]);
  if (moved && !isFurther) notMadeHere(plan, `specimen ${known.id}`);
  if (isFurther) for (const entry of [noGrowthOf(known), ...known.organisms.map(nameOf)]) plan.madeBy.delete(entry);
  const organisms = grownIn(plan, { ...known, organisms: isFurther ? [] : known.organisms }, values, known);
  if (!moved && known.status === status && sameOrganisms(organisms, known.organisms)) return known;
  const marks = collectedAt === known.collectedAt ? known.marks : markedAnew(known, { collectedAt }, entryMarks(line));
  return revise(known, { ...said, organisms, marks });
}

function nameOf({ id }: RecordedOrganism): string {
  return `organism ${id}`;
}

function sameOrganisms(some: readonly RecordedOrganism[], others: readonly RecordedOrganism[]): boolean {
  return JSON.stringify(some) === JSON.stringify(others);
}

/** The organisms with the one of a line. An organism that comes again in a new report keeps its id. */
function grownIn(
  plan: Plan,
  specimen: RecordedSpecimen,
  values: Values,
  before: RecordedSpecimen = specimen,
): readonly RecordedOrganism[] {
  const { organism: name, group, count } = values;
  const organisms = grownOf(specimen);
  if (name === null || isNoGrowth({ name, group })) {
    if (organisms.length === 0) return noGrowthWith(plan, specimen, values);
    notMadeHere(plan, `specimen ${specimen.id}`);
    const detail = "The record has organisms. A report that takes them away has the status corrected.";
    return refuse("result-contradicts", detail, { pointer: "/organisms" });
  }
  notMadeHere(plan, noGrowthOf(specimen));
  const known = organismOf(specimen, name);
  if (!known) {
    const id = organismOf(before, name)?.id ?? plan.newId();
    return [...organisms, { id, name, group, count }];
  }
  const now = { ...known, group: group ?? known.group, count: count ?? known.count };
  if (sameOrganisms([now], [known])) return organisms;
  notMadeHere(plan, nameOf(known));
  return organisms.map((one) => (one === known ? now : one));
}

/** That nothing grew, with the count of a line: a count that another line did not give says something else. */
function noGrowthWith(plan: Plan, specimen: RecordedSpecimen, { organism: name, group, count }: Values) {
  const [known] = specimen.organisms;
  if (!known) return name === null ? [] : [{ id: plan.newId(), name, group, count }];
  if (count === null || count === known.count) return specimen.organisms;
  notMadeHere(plan, noGrowthOf(specimen), "/organisms/count");
  return [{ ...known, count }];
}

/** Whether a name says that nothing grew. */
function isNoGrowth(named: Pick<RecordedOrganism, "name" | "group">): boolean {
  return identityOf(named).group === "no-growth";
}

function grownOf({ organisms }: RecordedSpecimen): RecordedOrganism[] {
  return organisms.filter((one) => !isNoGrowth(one));
}

function organismOf(
  { organisms }: Pick<RecordedSpecimen, "organisms">,
  name: string | null,
): RecordedOrganism | undefined {
  return name === null ? undefined : organisms.find((one) => folded(one.name) === folded(name));
}

/** Laboratories write one name in many cases. */
function folded(name: string): string {
  return name.trim().replace(/\s+/g, " ").toLowerCase();
}

function refuseFaults(
  plan: Plan,
  { specimen, known }: { specimen: RecordedSpecimen; known: RecordedSpecimen | undefined },
): void {
  const isPlacedAnew = known?.collectedAt !== specimen.collectedAt;
  const day = plan.care.zone.dayOf(specimen.collectedAt);
  const ofDay = isPlacedAnew ? cultureDayFaults(plan, day, "/collectedAt") : [];
  const [first, ...more]: Fault[] = [...ofDay, ...resultFaults(specimen)];
  if (first) throw new Problem(first, ...more);
}

/** What of a line waits for a person. It is kept as it was written. */
function marksOf({ care: { now: writtenAt, words = noWords } }: Plan, values: Values): LineMark[] {
  const { organism: name, group, count } = values;
  const then = { words, writtenAt };
  if (name === null) return [];
  const isUnknown = identityOf({ name, group }, then).group === null;
  const isUnreadable = countOf({ count }, then).kind === "unreadable";
  return [
    ...(isUnknown ? (["organism-unknown"] as const) : []),
    ...(isUnreadable ? (["count-unreadable"] as const) : []),
  ];
}
