import { expect, it } from "vitest";
import { dayWords, rangeWords } from "../../../src/domain/criteria/in-words.ts";
import {
  type Determination,
  determineWithHinges,
  type Edition,
  type Evidence,
  type Step,
  storyWords,
  summaryOf,
  timelineOf,
} from "../../../src/domain/criteria/index.ts";
import type { Story } from "../../../src/domain/criteria/story.ts";
import { ecdc2017 } from "../../../src/domain/editions/ecdc-2017.ts";
import { us2024 } from "../../../src/domain/editions/us-2024.ts";
import { catheters } from "./told/catheters.ts";
import { cultures } from "./told/cultures.ts";
import { european } from "./told/european.ts";
import { europeanOnset } from "./told/european-onset.ts";
import { repeats } from "./told/repeats.ts";
import { signs } from "./told/signs.ts";
import { stays } from "./told/stays.ts";
import { unknown } from "./told/unknown.ts";

const books: readonly (readonly [string, Edition, Readonly<Record<string, Story>>])[] = [
  ["cultures", us2024, cultures],
  ["signs", us2024, signs],
  ["catheters", us2024, catheters],
  ["stays", us2024, stays],
  ["repeats", us2024, repeats],
  ["unknown", us2024, unknown],
  ["european", ecdc2017, european],
  ["european-onset", ecdc2017, europeanOnset],
];

// The texts were read line by line against the rules when they were written. Whoever changes one reads it again.
it.each(books)("what is told of %s is what was read and found right", async (name, edition, stories) => {
  const told = new Map<string, string>();
  const chapters = Object.entries(stories).map(([title, story]) => chapter(title.toUpperCase(), story, edition, told));
  await expect(`${chapters.join("\n\n")}\n`).toMatchFileSnapshot(`golden/${name}.txt`);
});

// A reader sees the word of the status before the sentence: "not met" must never stand before what is so.
it.each(books)("what is not met in %s says so in its own words", (_name, edition, stories) => {
  const { culture, criteria, window } = edition;
  const canFail = new Set<string>([culture.id, window.id, ...criteria.map(({ id }) => id)]);
  const negative =
    /is not met|does not apply|cannot be used|grew nothing|was withdrawn|in the future|on no inpatient ward/;
  for (const story of Object.values(stories)) {
    for (const { rule, status, sentence } of determineWithHinges(timelineOf(story), edition).flatMap(
      (one) => one.derivation,
    )) {
      if (status === "failed") expect([canFail.has(rule), sentence]).toEqual([true, expect.stringMatching(negative)]);
      if (status === "held") expect(sentence).not.toMatch(negative);
    }
  }
});

/** A story, and what is told of it; for a step that an earlier story tells word for word, the title of that story. */
function chapter(title: string, story: Story, edition: Edition, told: Map<string, string>): string {
  const briefly = (step: Step) => {
    const words = stepWords(step);
    const earlier = told.get(words) ?? title;
    told.set(words, earlier);
    return earlier === title ? `    ${stepHead(step)}: ${words}` : `    ${stepHead(step)}: as in ${earlier}`;
  };
  const lines = determineWithHinges(timelineOf(story), edition).flatMap((one) => [
    ...headWords(one),
    ...one.derivation.map(briefly),
  ]);
  return [title, ...storyWords(story), ...lines].join("\n");
}

function headWords(one: Determination): string[] {
  const { subject, event, dependsOn } = one;
  const others = dependsOn.map(({ kind, id }) => `${kind} ${id}`).join(", ");
  return [
    `--> ${subject.kind} ${subject.id} of ${dayWords(subject.day)}: ${summaryOf(one)}`,
    ...(event ? [`    ${eventWords(event)}`] : []),
    ...(others === "" ? [] : [`    It depends on ${others}.`]),
  ];
}

function eventWords(event: NonNullable<Determination["event"]>): string {
  const { window, firstElementDay, hospitalDay, isCauti, repeatTimeframe, bloodstreamPeriod, wardId } = event;
  const blood = bloodstreamPeriod ? `blood ${rangeWords(bloodstreamPeriod)}` : "no period for blood";
  const ids = (label: string, list: readonly (number | string)[]) =>
    list.length > 0 ? [`${label} ${list.join(", ")}`] : [];
  return [
    isCauti ? "CAUTI" : "no CAUTI",
    `hospital day ${hospitalDay}`,
    wardId === null ? "no ward" : `ward ${wardId}`,
    `first element ${dayWords(firstElementDay)}`,
    `window ${rangeWords(window)}, usable from ${dayWords(window.usableFrom)}`,
    `repeats ${rangeWords(repeatTimeframe)}`,
    blood,
    ...ids("pathogens", event.pathogens),
    ...ids("added", event.addedPathogens),
    ...ids("secondary", event.secondaryBloodstream),
    ...ids("waiting for", event.bloodstreamWaiting),
  ].join("; ");
}

function stepHead({ rule, status, day }: Step): string {
  return [rule, status, ...(day === null ? [] : [dayWords(day)])].join(", ");
}

function stepWords({ sentence, evidence, nearest, lookUp }: Step): string {
  const rests = evidence.map(({ kind, id }: Evidence) => `${kind} ${id}`).join(", ");
  return [sentence, nearest, lookUp && `> ${lookUp}`, rests && `[${rests}]`].filter(Boolean).join(" ");
}
