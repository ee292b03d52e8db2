import { xoroshiro128plus } from "pure-rand/generator/xoroshiro128plus";
import { determine, determineWithHinges } from "../../src/domain/criteria/index.ts";
import { type Story, type StorySign, timelineOf } from "../../src/domain/criteria/story.ts";
import { us2024 } from "../../src/domain/editions/us-2024.ts";
import { type BenchResult, medianOf } from "./bench-line.ts";

/**
 * Determinations with every step of their derivations, against JSON.parse of the same timelines: the least that reading
 * them from anywhere costs. A timeline has 60 days, 3 cultures, 20 signs and 2 catheters.
 */
export async function benchDeterminations({
  seed,
  timelines,
}: {
  seed: number;
  timelines: number;
}): Promise<BenchResult> {
  const all = drawStories(seed, timelines).map(timelineOf);
  const texts = all.map((timeline) => JSON.stringify(timeline));
  const ours = await medianOf(3, () => all.map((timeline) => determine(timeline, us2024)));
  const withHinges = await medianOf(3, () => all.map((timeline) => determineWithHinges(timeline, us2024)));
  const parsed = await medianOf(3, () => texts.map((text): unknown => JSON.parse(text)));
  const found = ours.value.flat();
  const steps = found.reduce((sum, { derivation }) => sum + derivation.length, 0);
  const outcomes = new Map<string, number>();
  for (const { outcome } of found) outcomes.set(outcome, (outcomes.get(outcome) ?? 0) + 1);
  const bytes = texts.reduce((sum, text) => sum + text.length, 0);
  return {
    lines: [
      {
        ...{ what: `determinations of ${timelines} timelines`, oursS: ours.seconds },
        ...{ baseline: "JSON.parse of the same timelines", baselineS: parsed.seconds },
      },
    ],
    notes: [
      `Determinations: ${Math.round(timelines / ours.seconds)} timelines a second, with ${steps} sentences in all; a timeline has ${Math.round(bytes / timelines)} bytes of JSON.`,
      `With every other reading that can matter: ${Math.round(timelines / withHinges.seconds)} timelines a second, ${(withHinges.seconds / ours.seconds).toFixed(1)} times as long.`,
      `They came to: ${[...outcomes].map(([outcome, count]) => `${outcome} ${count}`).join(", ")}.`,
    ],
  };
}

const temperatures = ["36.8", "37.4", "38.0", "38.4", "39.1"] as const;
const otherSigns = ["suprapubic-tenderness", "costovertebral-pain", "urgency", "frequency", "dysuria"] as const;
const lastDay = 60;

function drawStories(seed: number, count: number): Story[] {
  const generator = xoroshiro128plus(seed);
  const below = (n: number) => (generator.next() >>> 0) % n;
  const oneOf = <T>(list: readonly [T, ...T[]]): T => list[below(list.length)] ?? list[0];
  const day = () => 1 + below(lastDay);
  const sign = (): StorySign =>
    below(2) === 0
      ? { day: day(), sign: oneOf(temperatures) }
      : { day: day(), sign: oneOf(otherSigns), finding: oneOf(["present", "absent", "absent"]) };
  return Array.from({ length: count }, () => {
    const moved = 5 + below(40);
    const removed = 4 + below(20);
    const again = removed + 2 + below(20);
    return {
      ageYears: 20 + below(70),
      wards: [
        [1, 1, moved],
        [2, moved, lastDay],
      ],
      catheters: [
        [1, removed],
        [again, again + below(14)],
      ],
      urine: [0, 1].map(() => ({ day: day(), grew: [["Escherichia coli", oneOf([">100000", "50,000", "10^5"])]] })),
      blood: [{ day: day(), grew: below(3) === 0 ? [["Escherichia coli", null]] : [] }],
      signs: Array.from({ length: 20 }, sign),
      lookedFor: below(4) > 0,
    };
  });
}
