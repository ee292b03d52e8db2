import { type Attempt, attempt, type Question } from "./attempt.ts";
import type { Step } from "./determination.ts";
import { daysWords, dayWords, rangeWords } from "./in-words.ts";
import type { RuleId } from "./rule.ts";
import type { Choice, Unknown, World } from "./world.ts";
import { isContradictory } from "./world.ts";

/** What an anchor comes to whatever the unknown is; what hangs on the unknown cannot be told, with what to look up. */
export function attemptInAll(worlds: readonly World[], question: Question): Attempt {
  const each = worlds.map((world) => ({ world, attempt: attempt(world, question) }));
  const [first] = each;
  if (!first) throw new Error("a timeline has at least one world");
  const keys = each.map((one) => keyOf(one.attempt, question));
  if (new Set(keys).size === 1) return first.attempt;
  const shared = first.attempt.steps.filter((step) => each.every((one) => one.attempt.steps.some(sameStep(step))));
  const open = unknownThatMatters(each.map(({ world }, i) => ({ world, key: keys[i] ?? "" })));
  return {
    outcome: "cannot-tell",
    met: null,
    steps: [...shared, ...open.map((what) => tell(what, first.world, question))],
  };
}

/**
 * Two attempts with the same key are told alike. For a culture that cannot be used, no admission and no infection come
 * to the same: it closes.
 */
function keyOf({ outcome, met }: Attempt, { anchor, culture }: Question): string {
  const isUnusable = anchor.kind === "specimen" && culture === null;
  if (!met) return isUnusable && outcome === "set-aside" ? "not-met" : outcome;
  const { criterion, dateOfEvent, onset, isAssociated, wardId, episode } = met;
  return [outcome, criterion.id, dateOfEvent, onset, isAssociated, wardId, episode.firstDay].join(" ");
}

/** A sentence names its rule and what came of it. */
const sameStep = (one: Step) => (other: Step) => other.sentence === one.sentence;

const unknowns: readonly (readonly [Unknown, keyof Choice])[] = [
  ["age", "age"],
  ["removal", "catheters"],
  ["signs", "doubtfulSigns"],
  ["setting", "unknownWards"],
];

/** What alone can change the answer; where only several together can, all that differs. */
function unknownThatMatters(each: readonly { world: World; key: string }[]): Unknown[] {
  const names = unknowns.map(([, field]) => field);
  const matters = unknowns.filter(([, field]) =>
    each.some((a) =>
      each.some((b) => {
        const others = names.filter((name) => name !== field);
        return a.key !== b.key && others.every((name) => a.world.choice[name] === b.world.choice[name]);
      }),
    ),
  );
  return matters.map(([what]) => what);
}

function tell(what: Unknown, world: World, { anchor }: Question): Step {
  const { sentence, lookUp, rule } = words[what](world, anchor.day);
  return { rule, status: "cannot-tell", day: anchor.day, sentence, evidence: [], nearest: null, lookUp };
}

interface Told {
  readonly rule: RuleId;
  readonly sentence: string;
  readonly lookUp: string;
}

const words: Readonly<Record<Unknown, (world: World, day: number) => Told>> = {
  age: ({ edition }) => ({
    rule: edition.criteria.find(({ id }) => id === "suti-2")?.id ?? edition.window.id,
    sentence: "The answer hangs on the patient's age, and nobody recorded the birth date.",
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
        ? "The answer hangs on a catheter whose removal is recorded before its insertion."
        : `The answer hangs on when the catheter was removed${when}.`,
      lookUp: contradictory ? "Correct the insertion or the removal." : "Look up when the catheter was removed.",
    };
  },
  signs: ({ edition }, day) => ({
    rule: edition.criteria[0]?.id ?? edition.window.id,
    sentence: `The answer hangs on a sign near ${dayWords(day)} of which the value or the hour is not known.`,
    lookUp: `Look up temperatures without a readable value, and the hour of urgency, frequency or dysuria, within ${daysWords(edition.options.windowDays)} of the specimen.`,
  }),
  setting: ({ edition }) => ({
    rule: edition.onset.id,
    sentence: "The answer hangs on whether a ward is an inpatient ward, and nobody has said so.",
    lookUp: "Give every ward of the patient a setting.",
  }),
};
