import { readdirSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { determineWithHinges, type Rule, ruleIds, rulesOf, sourceText } from "../../../src/domain/criteria/index.ts";
import { timelineOf } from "../../../src/domain/criteria/story.ts";
import { editionNamed, editions } from "../../../src/domain/editions/index.ts";

const rules: ReadonlyMap<string, Rule> = new Map(editions.flatMap(rulesOf).map((rule) => [rule.id, rule]));
const files = readdirSync(new URL("../../../src/domain/criteria/", import.meta.url));

describe("every rule of every edition", () => {
  it("is in the list of ids, and the list holds no other", () => {
    expect([...rules.keys()].sort()).toEqual([...ruleIds].sort());
  });

  it.each([...rules.values()].map((rule) => [rule.id, rule] as const))(
    "%s is a file, with its source and days",
    (id, rule) => {
      expect(files).toContain(`${id}.ts`);
      expect(rule.sources.map(sourceText).join()).not.toBe("");
      expect(rule.says).toMatch(/\.$/);
      expect(rule.inForce.to ?? Number.POSITIVE_INFINITY).toBeGreaterThan(rule.inForce.from);
      expect(rule.examples.length).toBeGreaterThan(0);
    },
  );
});

/** Rules that are always told, or never in doubt of their own. */
const certain = new Set([
  "location-of-attribution",
  "after-death",
  "after-discharge",
  "date-of-event",
  "date-of-onset",
  "donor-support",
  "evidence-window",
  "infection-window",
  "location-on-onset",
  "readmission",
  "repeat-14-days",
  "repeat-timeframe",
]);

it.each([...rules.values()].filter(({ id }) => !certain.has(id)).map((rule) => [rule.id, rule] as const))(
  "%s has examples of met, not met and cannot tell",
  (_id, { examples }) => {
    // What is so without a definition that is not met, such as "healthcare-associated", is noted.
    const statuses = examples.map(({ status }) => (status === "noted" ? "failed" : status));
    expect(new Set(statuses)).toEqual(new Set(["held", "failed", "cannot-tell"]));
  },
);

const examples = [...rules.values()].flatMap((rule) => rule.examples.map((example) => ({ rule, example })));

it.each(examples.map((one) => [`${one.rule.id}: ${one.example.title}: ${one.example.status}`, one] as const))(
  "%s",
  (_title, { rule, example }) => {
    const edition = editionNamed(example.editionId);
    if (!edition) throw new Error(`there is no edition ${example.editionId}`);
    const determinations = determineWithHinges(timelineOf(example.story), edition);
    const first = determinations.find(({ subject }) => subject.id === 1);
    const told = (first?.derivation ?? []).filter((step) => step.rule === rule.id);
    expect(told.map(({ status, sentence }) => `${status}: ${sentence}`)).toEqual(
      expect.arrayContaining([
        expect.stringMatching(new RegExp(`^${example.status}: .*${literal(example.says ?? "")}`)),
      ]),
    );
    if (example.status === "cannot-tell") expect(told.some(({ lookUp }) => lookUp !== null)).toBe(true);
  },
);

function literal(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");
}
