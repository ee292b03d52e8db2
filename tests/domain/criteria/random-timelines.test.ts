import { randomInt } from "node:crypto";
import fc from "fast-check";
import { expect, it } from "vitest";
import {
  type Determination,
  determine,
  type Edition,
  restsOnFewTemperatures,
} from "../../../src/domain/criteria/index.ts";
import { type Story, storyDay, timelineOf } from "../../../src/domain/criteria/story.ts";
import { ecdc2017 } from "../../../src/domain/editions/ecdc-2017.ts";
import { us2024 } from "../../../src/domain/editions/us-2024.ts";
import { randomEuropeanStory } from "./second/random-european-story.ts";
import { randomStory } from "./second/random-story.ts";
import { secondDetermine } from "./second/second-determine.ts";
import { secondEuropean } from "./second/second-european.ts";
import { strip } from "./second/strip.ts";

const runs = Number(process.env.TIMELINES ?? 2_000);
const seed = Number(process.env.SEED ?? randomInt(1_000_000));
const msPerRun = 20;

/** What both implementations are compared by. */
type Compared = Record<string, unknown>;

/** An edition, the stories that it is tried on, and what both implementations say of one. */
interface Trial {
  readonly edition: Edition;
  readonly stories: fc.Arbitrary<Story>;
  readonly first: (story: Story) => Compared[];
  readonly second: (story: Story) => Compared[];
  /** What must come out at least once, and once in ten thousand stories. */
  readonly outcomes: readonly string[];
}

function firstUnitedStates(story: Story): Compared[] {
  return determine(timelineOf(story), us2024).map((one) => {
    const { subject, repeatOf, event } = one;
    const compared = comparedTo(one, repeatOf?.id);
    return event && !repeatOf
      ? { id: subject.id, ...compared, secondary: event.secondaryBloodstream }
      : { id: subject.id, ...compared };
  });
}

function firstEuropean(story: Story): Compared[] {
  return determine(timelineOf(story), ecdc2017).map((one) => {
    const name = ({ kind, id }: Determination["subject"]) => `${kind} ${id}`;
    return { id: name(one.subject), ...comparedTo(one, one.repeatOf ? name(one.repeatOf) : undefined) };
  });
}

function comparedTo(one: Determination, repeatOf: string | number | undefined): Compared {
  const { outcome, event } = one;
  const few = restsOnFewTemperatures(one);
  if (repeatOf !== undefined) return { outcome, repeatOf };
  if (!event) return { outcome, few };
  return {
    ...{ outcome, few },
    criterion: event.criterion,
    date: event.dateOfEvent - storyDay(0),
    onset: event.onset,
    device: event.deviceAssociated,
    ward: event.wardId,
  };
}

/** Both answers by what the second can say of few temperatures: nothing where that depends on what is not known. */
function comparable(ours: readonly Compared[], theirs: readonly Compared[]): [Compared[], Compared[]] {
  const canSay = theirs.map(({ outcome, criterion }) => outcome === "not-met" || criterion === "abuti");
  return [
    ours.map((one, i) => (canSay[i] && theirs[i]?.few !== undefined ? one : { ...one, few: undefined })),
    theirs.map((one, i) => (canSay[i] ? one : { ...one, few: undefined })),
  ];
}

/** An answer of the second implementation as far as both are compared. */
function withoutRest<
  Answer extends { id: unknown; outcome: string; repeatOf?: unknown; admission?: unknown; few?: boolean | undefined },
>(answer: Answer): Compared {
  const { admission: _admission, ...rest } = answer;
  const { id, outcome, repeatOf, few } = answer;
  if (repeatOf !== undefined) return { id, outcome, repeatOf };
  return outcome === "event" || outcome === "excluded" ? rest : { id, outcome, few };
}

function secondUnitedStates(story: Story): Compared[] {
  const bloodDay = (id: number) => story.blood?.[id - 101]?.day ?? 0;
  return secondDetermine(story).map(({ secondary, ...answer }) => {
    const sorted = secondary?.toSorted((a, b) => bloodDay(a) - bloodDay(b) || a - b);
    return withoutRest({ ...answer, ...(sorted ? { secondary: sorted } : {}) });
  });
}

const temperatures = ["few temperatures, compared", "enough temperatures, compared"];
const shared = [
  "repeat",
  "cannot-tell",
  "not-met",
  "not-usable",
  "pending",
  "set-aside",
  "after-discharge",
  ...temperatures,
];

const trials: readonly Trial[] = [
  {
    edition: us2024,
    stories: randomStory,
    first: firstUnitedStates,
    second: secondUnitedStates,
    outcomes: ["suti-1a", "suti-1b", "suti-2", "abuti", ...shared],
  },
  {
    edition: ecdc2017,
    stories: randomEuropeanStory,
    first: firstEuropean,
    second: (story) => secondEuropean(story).map(withoutRest),
    outcomes: ["uti-a", "uti-b", "brought uti-a", "brought uti-b", "with a device", "without a device", ...shared],
  },
];

it.each(trials.map((one) => [one.edition.id, one] as const))(
  `%s: a second implementation says the same of ${runs} random timelines, SEED=${seed}`,
  (id, { edition, stories, first, second, outcomes }) => {
    const seen = new Map<string, number>();
    const count = (name: string) => seen.set(name, (seen.get(name) ?? 0) + 1);
    const property = fc.property(stories, (story) => {
      const ours = first(story);
      for (const { criterion, outcome, onset, device, few } of ours) {
        if (few) count("few temperatures");
        count(String(criterion ?? outcome));
        if (onset === "present-on-admission") count(`brought ${criterion}`);
        if (device !== undefined) count(device ? "with a device" : "without a device");
      }
      const [ourAnswers, theirAnswers] = comparable(ours, second(story));
      for (const { few } of theirAnswers)
        if (few !== undefined) count(`${few ? "few" : "enough"} temperatures, compared`);
      expect(ourAnswers).toEqual(theirAnswers);
    });
    const found = fc.check(property, { numRuns: runs, seed, endOnFailure: false });
    if (found.failed) {
      const [story] = found.counterexample ?? [];
      const both = story && [`first:  ${JSON.stringify(first(story))}`, `second: ${JSON.stringify(second(story))}`];
      const told = story ? [strip(story), ...(both ?? []), ...stepsOf(story, edition)] : [String(found.errorInstance)];
      throw new Error([`SEED=${seed} TIMELINES=${runs}, ${id}`, ...told].join("\n"));
    }
    const counts = [...seen].map(([name, times]) => `${name} ${times}`).join(", ");
    process.stdout.write(`SEED=${seed}, ${id}, ${runs} timelines: ${counts}\n`);
    for (const name of outcomes)
      expect(seen.get(name) ?? 0, name).toBeGreaterThanOrEqual(Math.max(1, Math.floor(runs / 10_000)));
  },
  Math.max(60_000, runs * msPerRun),
);

function stepsOf(story: Story, edition: Edition): string[] {
  return determine(timelineOf(story), edition).flatMap(({ subject, derivation }) =>
    derivation.map(({ rule, status, sentence }) => `  ${subject.kind} ${subject.id}, ${rule}, ${status}: ${sentence}`),
  );
}
