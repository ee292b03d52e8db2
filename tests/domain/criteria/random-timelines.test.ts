import { randomInt } from "node:crypto";
import fc from "fast-check";
import { expect, it } from "vitest";
import { determine } from "../../../src/domain/criteria/index.ts";
import { type Story, storyDay, timelineOf } from "../../../src/domain/criteria/story.ts";
import { us2024 } from "../../../src/domain/editions/us-2024.ts";
import { randomStory } from "./second/random-story.ts";
import { secondDetermine } from "./second/second-determine.ts";
import { strip } from "./second/strip.ts";

const runs = Number(process.env.TIMELINES ?? 20_000);
const seed = Number(process.env.SEED ?? randomInt(1_000_000));
const msPerRun = 20;

/** What both implementations are compared by. */
type Compared = Record<string, unknown>;

function first(story: Story): Compared[] {
  return determine(timelineOf(story), us2024).map(({ subject, outcome, event, repeatOf }) => {
    if (repeatOf) return { id: subject.id, outcome, repeatOf: repeatOf.id };
    if (!event) return { id: subject.id, outcome };
    return {
      id: subject.id,
      outcome,
      criterion: event.criterion,
      date: event.dateOfEvent - storyDay(0),
      onset: event.onset,
      device: event.deviceAssociated,
      ward: event.wardId,
      secondary: event.secondaryBloodstream,
    };
  });
}

function second(story: Story): Compared[] {
  return secondDetermine(story).map(({ admission: _admission, ...answer }) => {
    const { id, outcome, repeatOf } = answer;
    if (repeatOf !== undefined) return { id, outcome, repeatOf };
    if (outcome !== "event" && outcome !== "excluded") return { id, outcome };
    return {
      ...answer,
      secondary: answer.secondary?.toSorted((a, b) => bloodDay(story, a) - bloodDay(story, b) || a - b),
    };
  });
}

function bloodDay(story: Story, id: number): number {
  return story.blood?.[id - 101]?.day ?? 0;
}

it(
  `a second implementation says the same of ${runs} random timelines, SEED=${seed}`,
  () => {
    const seen = new Map<string, number>();
    const property = fc.property(randomStory, (story) => {
      const [ours, theirs] = [first(story), second(story)];
      for (const one of ours)
        seen.set(String(one.criterion ?? one.outcome), (seen.get(String(one.criterion ?? one.outcome)) ?? 0) + 1);
      expect(ours).toEqual(theirs);
    });
    const found = fc.check(property, { numRuns: runs, seed, endOnFailure: false });
    if (found.failed) {
      const [story] = found.counterexample ?? [];
      throw new Error(`SEED=${seed} TIMELINES=${runs}\n${story ? strip(story) : ""}\n${story ? told(story) : ""}`);
    }
    process.stdout.write(
      `SEED=${seed}, ${runs} timelines: ${[...seen].map(([name, count]) => `${name} ${count}`).join(", ")}\n`,
    );
    for (const name of [
      "suti-1a",
      "suti-1b",
      "suti-2",
      "abuti",
      "repeat",
      "cannot-tell",
      "not-met",
      "after-discharge",
    ]) {
      expect(seen.get(name) ?? 0, name).toBeGreaterThan(runs / 10_000);
    }
  },
  Math.max(60_000, runs * msPerRun),
);

function told(story: Story): string {
  const steps = determine(timelineOf(story), us2024).flatMap(({ subject, derivation }) =>
    derivation.map(({ rule, status, sentence }) => `  urine ${subject.id}, ${rule}, ${status}: ${sentence}`),
  );
  return [`first:  ${JSON.stringify(first(story))}`, `second: ${JSON.stringify(second(story))}`, ...steps].join("\n");
}
