import type { Story, StorySpecimen } from "../../../../src/domain/criteria/story.ts";
import { type Admission, bloodIn, isReported, ofInfants, ordinary, signsThere, unknownSign } from "./elements.ts";
import { agreed, hasFewTemperatures } from "./few-temperatures.ts";
import { closedOf, growsOneOf, organisms, possiblePathogens } from "./grown.ts";
import { type Chosen, possibleWorlds } from "./possible-worlds.ts";

/** What the second implementation says of one urine specimen, days as in the story. */
export interface Answer {
  readonly id: number;
  outcome: string;
  criterion?: string;
  date?: number;
  onset?: string;
  device?: boolean;
  ward?: number | null;
  repeatOf?: number;
  secondary?: number[];
  admission?: number;
  /** Rests on temperatures of fewer than half of the days; undefined where that depends on what is not known. */
  few?: boolean | undefined;
}

/** All urine specimens of a story by the definitions of the United States, January 2024. */
export function secondDetermine(story: Story): Answer[] {
  const urine = (story.urine ?? [])
    .map((one, i) => ({ one, id: i + 1 }))
    .sort((a, b) => a.one.day - b.one.day || a.id - b.id);
  const answers = urine.map(({ one, id }): Answer => {
    const closed = closedOf(one, story);
    return closed === null ? { ...sayOf(one, story), id } : { id, outcome: closed };
  });
  return foldRepeats(answers, urine, story);
}

/** The same in every way in which the unknown can be, or cannot be told. No use and no infection come to the same. */
function sayOf(one: StorySpecimen, story: Story): Omit<Answer, "id"> {
  const ways = possiblePathogens(one, story);
  if (ways.every((pathogens) => pathogens === null)) return { outcome: "not-usable" };
  const found = new Map<string, Omit<Answer, "id">>();
  const fews = new Set<boolean | undefined>();
  for (const chosen of possibleWorlds(story)) {
    for (const pathogens of ways) {
      const { few, ...answer } = judge(one, story, chosen, pathogens);
      found.set(JSON.stringify(answer), answer);
      fews.add(few);
    }
  }
  const [only] = found.values();
  return found.size === 1 && only ? { ...only, few: agreed(fews) } : { outcome: "cannot-tell" };
}

function foldRepeats(answers: Answer[], urine: readonly { one: StorySpecimen; id: number }[], story: Story): Answer[] {
  const dayOf = new Map(urine.map(({ one, id }) => [id, one.day]));
  const events = answers
    .filter(({ outcome }) => outcome === "event")
    .sort((a, b) => (a.date ?? 0) - (b.date ?? 0) || (dayOf.get(a.id) ?? 0) - (dayOf.get(b.id) ?? 0) || a.id - b.id);
  const counted: Answer[] = [];
  for (const event of events) {
    const earlier = counted.find(
      (one) => one.admission === event.admission && (event.date ?? 0) - (one.date ?? 0) < 14,
    );
    if (earlier) Object.assign(event, { outcome: "repeat", repeatOf: earlier.id });
    else counted.push(event);
  }
  for (const event of counted) {
    if (story.donorSupportFrom !== undefined && (dayOf.get(event.id) ?? 0) >= story.donorSupportFrom)
      event.outcome = "excluded";
  }
  return answers;
}

function judge(
  urine: StorySpecimen,
  story: Story,
  chosen: Chosen,
  pathogens: readonly string[] | null,
): Omit<Answer, "id"> {
  let answer: Omit<Answer, "id"> = { outcome: "set-aside" };
  for (const admission of admissionsOf(story, chosen)) {
    if (urine.day < admission.first - 2 || (admission.isOver && urine.day > admission.last + 4)) continue;
    if (pathogens === null) return { outcome: "not-met" };
    answer = judgeIn({ urine, pathogens }, story, chosen, admission);
    if (answer.outcome === "event" || answer.outcome === "cannot-tell") return answer;
  }
  return answer;
}

/** Stays with their inpatient days; two without a full day between them are one. */
function admissionsOf(story: Story, chosen: Chosen): Admission[] {
  const known = story.knownThrough ?? 60;
  const cuts = [0, ...(story.newStayAt ?? []), story.wards?.length ?? 0];
  const own = cuts.slice(1).flatMap((end, i) => {
    const wardsOn = new Map<number, number[]>();
    let isOver = true;
    for (let index = cuts[i] ?? 0; index < end; index++) {
      const [ward, from, to] = story.wards?.[index] ?? [0, 0, 0];
      if (to === null || to > known) isOver = false;
      if (!chosen.inpatient[index]) continue;
      for (let day = from; day <= Math.min(to ?? known, known); day++)
        wardsOn.set(day, [...(wardsOn.get(day) ?? []), ward]);
    }
    const days = [...wardsOn.keys()];
    return days.length === 0 ? [] : [{ first: Math.min(...days), last: Math.max(...days), isOver, wardsOn }];
  });
  const joined: Admission[] = [];
  for (const one of own.sort((a, b) => a.first - b.first)) {
    const before = joined.at(-1);
    if (!before || one.first - before.last > 1) joined.push(one);
    else {
      const wardsOn = new Map(before.wardsOn);
      for (const [day, wards] of one.wardsOn) wardsOn.set(day, [...(wardsOn.get(day) ?? []), ...wards]);
      joined[joined.length - 1] = {
        first: before.first,
        last: Math.max(before.last, one.last),
        isOver: before.isOver && one.isOver,
        wardsOn,
      };
    }
  }
  return joined;
}

/** Walks through the days of an admission and numbers those with a catheter. */
function isEligibleOn(date: number, { first, wardsOn }: Admission, { tubes }: Chosen): boolean {
  let number = 0;
  let before = 0;
  for (let day = first; day <= date; day++) {
    before = number;
    number = wardsOn.has(day) && tubes.some(({ from, to }) => from <= day && day <= to) ? number + 1 : 0;
  }
  return number > 2 || (number === 0 && before > 2);
}

function judgeIn(
  { urine, pathogens }: { urine: StorySpecimen; pathogens: readonly string[] },
  story: Story,
  chosen: Chosen,
  admission: Admission,
): Omit<Answer, "id"> {
  const from = Math.max(urine.day - 3, admission.first - 2);
  const to = urine.day + 3;
  const dated = (day: number) => Math.max(admission.first, Math.min(urine.day, day));
  const signs = signsThere(story, chosen).filter(({ day }) => day >= from && day <= to);
  const counts = (name: string, day: number) =>
    name !== "fever" || chosen.age < 66 || isEligibleOn(dated(day), admission, chosen);
  const firstOf = (names: readonly string[]) =>
    Math.min(...signs.filter(({ name, day }) => names.includes(name) && counts(name, day)).map(({ day }) => day));
  const conclude = (criterion: string, day: number) =>
    event({ criterion, raw: Math.min(day, urine.day), from, urine, story, chosen, admission });

  const one = firstOf(ordinary);
  if (one < 99) return conclude(isEligibleOn(dated(one), admission, chosen) ? "suti-1a" : "suti-1b", one);
  const isInfant = chosen.age <= 1;
  const two = isInfant ? firstOf(ofInfants) : 99;
  if (two < 99) return conclude("suti-2", two);

  const blood = bloodIn(story, from, to, pathogens);
  const isUnknown = unknownSign(story, chosen, { admission, from, to, isInfant, counts });
  const isElement = Array.from({ length: to - from + 1 }, (_, i) => from + i).some((day) => counts("fever", day));
  const hasNone = !signs.some(({ name }) => name === "fever");
  const few = isElement && hasNone && hasFewTemperatures(story, { from, to, ...admission });
  if (blood.first < 99) return isUnknown ? { outcome: "cannot-tell" } : { ...conclude("abuti", blood.first), few };
  return { outcome: isUnknown || blood.isWaiting ? "cannot-tell" : "not-met", few };
}

interface Concluding {
  readonly criterion: string;
  readonly raw: number;
  readonly from: number;
  readonly urine: StorySpecimen;
  readonly story: Story;
  readonly chosen: Chosen;
  readonly admission: Admission;
}

function event({ criterion, raw, from, urine, story, chosen, admission }: Concluding): Omit<Answer, "id"> {
  const date = Math.max(raw, admission.first);
  const late = admission.isOver ? raw - admission.last : 0;
  const onset = date < admission.first + 2 ? "present-on-admission" : "healthcare-associated";
  const [ward = null] = admission.wardsOn.get(date - 1) ?? admission.wardsOn.get(date) ?? [];
  const all = (urine.grew ?? []).map(([name]) => name).filter((name) => organisms[name]?.is === "bacterium");
  const secondary = (story.blood ?? []).flatMap((one, i) => {
    const isElement = criterion === "abuti" && one.day >= from && one.day <= urine.day + 3;
    const counts = isElement
      ? growsOneOf(one, all).length > 0
      : one.day >= from && one.day < date + 14 && growsOneOf(one, all).length > 0;
    return counts && isReported(one, story) ? [101 + i] : [];
  });
  return {
    outcome: late > 1 ? "after-discharge" : "event",
    criterion,
    date,
    onset,
    device: isEligibleOn(date, admission, chosen),
    ward: onset === "healthcare-associated" ? ward : null,
    admission: admission.first,
    secondary,
  };
}
