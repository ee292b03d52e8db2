import type { DayNumber } from "../days/day-number.ts";
import type { Evidence, Step, Subject } from "./determination.ts";
import { doubtfulHours, leavesOpen, symptomsWithoutCatheter } from "./doubtful-hours.ts";
import { daysWords, dayWords, listWords, rangeWords } from "./in-words.ts";
import type { Tried } from "./merge-worlds.ts";
import type { CultureQuestion } from "./possible-cultures.ts";
import type { RuleId } from "./rule.ts";
import type { Sign } from "./surveillance-timeline.ts";
import { isHuman } from "./temperature.ts";
import type { Unknown, World } from "./world.ts";
import { isContradictory } from "./world.ts";

/** The step that tells of something unknown on which the answer hangs, and what to look up. */
export function tellUnknown(what: Unknown, world: World, anchor: Subject): Step {
  const { sentence, lookUp, rule, evidence = [] } = words[what](world, anchor.day);
  return { rule, status: "cannot-tell", day: anchor.day, sentence, evidence, nearest: null, lookUp };
}

const noInfection = "no infection";
const stillOpen = "still open";

/** The step of a question about the culture that decides: what each of its answers would come to. */
export function questionStep(question: CultureQuestion, at: number, each: readonly Tried[], anchor: Subject): Step {
  const byResult = new Map<string, string[]>();
  question.options.forEach((option, answer) => {
    const tried = each.filter(({ possible }) => possible.answers.some((answers) => answers[at] === answer));
    const results = listWords([...new Set(tried.map(resultWords))].sort(byRank), "or");
    byResult.set(results, [...(byResult.get(results) ?? []), option.words]);
  });
  const parts = [...byResult]
    .sort(([a], [b]) => byRank(a, b))
    .map(([result, options]) => `${listWords(options, "or")}: ${result}`);
  const sentence = `${question.subject} decides the answer. ${capitalized(parts.join("; "))}.`;
  const rule = each[0]?.world.edition.culture.id ?? "urine-culture";
  const evidence = [{ kind: anchor.kind, id: anchor.id }];
  return { rule, status: "cannot-tell", day: anchor.day, sentence, evidence, nearest: null, lookUp: question.lookUp };
}

function resultWords({ attempt: { outcome, met } }: Tried): string {
  if (outcome === "cannot-tell") return stillOpen;
  if (met === null) return noInfection;
  const [title = ""] = met.criterion.title.split(":");
  return `${title} of ${dayWords(met.dateOfEvent)}${outcome === "after-discharge" ? ", not reported after discharge" : ""}`;
}

/** What would be an infection comes first. */
function byRank(a: string, b: string): number {
  const rank = (result: string) => [stillOpen, noInfection].indexOf(result);
  return rank(a) - rank(b);
}

function capitalized(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

interface Told {
  readonly rule: RuleId;
  readonly sentence: string;
  readonly lookUp: string;
  readonly evidence?: readonly Evidence[];
}

/** Signs of which the value or the hour is not known, and symptoms of a day whose catheter has no hour. */
function tellSigns({ edition, timeline }: World, day: DayNumber): Told {
  const { windowDays } = edition.options;
  const near = timeline.signs.filter(
    ({ finding, when }) => finding === "present" && Math.abs(when.day - day) <= windowDays,
  );
  const symptoms = near.filter(({ sign }) => symptomsWithoutCatheter.has(sign));
  const hours = doubtfulHours(timeline.catheters).filter(
    (one) => one.isDayKnown && symptoms.some(({ when }) => leavesOpen(one, when)),
  );
  const isUnreadable = ({ sign, temperature }: Sign) =>
    sign === "temperature" && (temperature === null || !isHuman(temperature));
  const general = hours.length === 0 || near.some(isUnreadable) || symptoms.some(({ when }) => when.at === null);
  const sentences = hours.map(
    ({ what, day: on }) => `The answer depends on the hour of the catheter's ${what} on ${dayWords(on)}.`,
  );
  const lookUps = hours.map(
    ({ what, day: on }) =>
      `Look up at what hour the catheter was ${what === "removal" ? "removed" : "inserted"} on ${dayWords(on)}: urgency, frequency and dysuria count only while no catheter is in place.`,
  );
  if (general) {
    sentences.push(`The answer depends on a sign near ${dayWords(day)} of which the value or the hour is not known.`);
    lookUps.push(
      `Look up temperatures without a readable value, and the hour of urgency, frequency or dysuria, within ${daysWords(windowDays)} of the specimen.`,
    );
  }
  return {
    rule: edition.criteria[0]?.id ?? edition.window.id,
    sentence: sentences.join(" "),
    lookUp: lookUps.join(" "),
    evidence: hours.map(({ catheterId: id }) => ({ kind: "catheter", id })),
  };
}

const words: Readonly<Record<Unknown, (world: World, day: number) => Told>> = {
  age: ({ edition }) => ({
    rule: edition.criteria.find(({ id }) => id === "suti-2")?.id ?? edition.window.id,
    sentence: "The answer depends on the patient's age, and the birth date is not recorded.",
    lookUp: "Look up the patient's birth date.",
  }),
  removal: ({ edition, timeline }) => {
    const doubtful = timeline.catheters.find((one) => one.latestEndDay !== null || isContradictory(one));
    const contradictory = doubtful !== undefined && isContradictory(doubtful);
    const when =
      doubtful?.end && doubtful.latestEndDay !== null
        ? `, at some time from ${rangeWords({ first: doubtful.end.day, last: doubtful.latestEndDay })}`
        : "";
    return {
      rule: edition.device.id,
      sentence: contradictory
        ? "The answer depends on a catheter whose removal is recorded before its insertion."
        : `The answer depends on when the catheter was removed${when}.`,
      lookUp: contradictory ? "Correct the insertion or the removal." : "Look up when the catheter was removed.",
    };
  },
  signs: tellSigns,
  setting: ({ edition }) => ({
    rule: edition.onset.id,
    sentence: "The answer depends on whether a ward is an inpatient ward, and its setting is not recorded.",
    lookUp: "Give every ward of the patient a setting.",
  }),
};
