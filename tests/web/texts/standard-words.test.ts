import { readdirSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import i18next from "i18next";
import { describe, expect, it } from "vitest";
import { caseDecisions, caseLists, caseStates, findingKinds } from "../../../shared/case-words.ts";
import { determinationOutcomes, onsets } from "../../../shared/culture-words.ts";
import { figureWords } from "../../../shared/figure-words.ts";
import { gapWords } from "../../../shared/gap-words.ts";
import { limitRules } from "../../../shared/month-report.ts";
import { permissions } from "../../../shared/permissions.ts";
import { policyRules, ruleSentence } from "../../../shared/policy-rules.ts";
import { problems } from "../../../shared/problems.ts";
import { absenceKinds, dispositions, roles, sexes } from "../../../shared/vocabulary.ts";
import { defaultPolicy } from "../../../src/domain/policy/default-policy.ts";
import { language } from "../../../src/web/texts/language.ts";

/** Every catalogue registers its texts when it is loaded. */
const folder = fileURLToPath(new URL("../../../src/web/texts/", import.meta.url));
const catalogues = readdirSync(folder).filter((file) => file.endsWith(".ts"));
for (const file of catalogues) await import(join(folder, file));

/** What is not written, what is written instead, and a text of before that says it. */
type Term = readonly [old: RegExp, write: string, example: string];

/** Words that no text of the product uses: foreign or private, where American clinical English has a plain word. */
const unsaid: readonly Term[] = [
  [/\b(some|no|any|every)body\b/i, "say who, or “no one” where no person acted", "Nobody has decided yet."],
  [/\banew\b/i, "again", "Read it anew"],
  [/\bstands?\b/i, "is", "It stands in its policy"],
  [/\b(lies|lie)\b/i, "is", "The end lies before the beginning"],
  [/\bhad\b/i, "present tense", "The file could not be had."],
  [/\b(tells?|told)\b/i, "report, list, name", "The entries below tell each one."],
  [/\bput in\b|\bput into\b/i, "inserted, entered", "Put in at"],
  [/\b(take|taken) along\b/i, "export", "Take along as PDF"],
  [/\bwhat was said\b/i, "the entry", "What was said of it"],
  [/\bmend(s|ed)?\b/i, "fix", "one thing has to be mended"],
];

/** One name for a thing: what was written once, and what is written everywhere. Sources stand in the glossary. */
const names: readonly Term[] = [
  [/\bwards?\b/i, "unit", "The ward is open."],
  [/\bcame out\b|\bit is out\b/i, "removed; Record removal", "The catheter came out whole"],
  [/record (a|the) removal/i, "Record removal", "Record a removal"],
  [/record (an|the) insertion/i, "Record insertion", "Record an insertion"],
  [/out of the balloon/i, "Balloon volume removed", "Drawn out of the balloon"],
  [/\bgone at\b/i, "First noted absent", "Gone at"],
  [/still in place at/i, "Last seen in place", "Still in place at"],
  [/how it is held/i, "Securement", "How it is held"],
  [/bore it|how the patient took/i, "Patient response", "How the patient bore it"],
  [/how the urine looked|appearance of the urine/i, "Urine appearance", "How the urine looked"],
  [/\bstory\b/i, "Catheter history", "A catheter's story"],
  [/^seen in place/i, "Confirmed in place", "Seen in place"],
  [/not seen lately/i, "Not confirmed", "Not seen lately"],
  [/another answer/i, "Other decision", "Another answer"],
  [/to be removed/i, "Remove", "To be removed"],
  [/\bprescriber/i, "provider", "Ask the prescriber"],
  [/hand-over/i, "handoff", "For hand-over"],
  [/theat(er|re)/i, "OR", "Theater"],
  [/\bvoid(s|ed|ing)?\b/i, "mark as entered in error", "Void the entry"],
  [/\bcare checks?\b/i, "maintenance bundle check", "Care check"],
  [/\bwatch(ed|es|ing)?\b/i, "under surveillance", "Watched so far"],
  [/none found|none were found/i, "No infection identified", "None found"],
  [/what the definitions say/i, "Determination", "What the definitions say"],
  [/infection window(?! period)/i, "infection window period", "Infection window"],
  [/repeat timeframe/i, "repeat infection timeframe", "Repeat timeframe"],
  [/bloodstream period/i, "secondary BSI attribution period", "Bloodstream period"],
  [/brought in/i, "present on admission", "brought in"],
  [/what is missing/i, "Data quality", "What is missing"],
  [/\bremark\b/i, "Comment", "Remark"],
  [/beside it|set beside/i, "Compare with", "Month beside it"],
  [/\bread on\b/i, "Data as of", "Read on {{when}}."],
  [/^(all )?terms$/i, "Glossary", "Terms"],
  [/for programs/i, "API", "For programs"],
  [/rules of the definitions/i, "Surveillance definitions", "Rules of the definitions"],
  [/units compared/i, "Compare units", "Units compared"],
  [/cultures waiting$/i, "Cultures to review", "Cultures waiting"],
  [/close[sd]? (by )?themselves/i, "Closed automatically", "Closed by themselves"],
  [/since somebody decided/i, "Changed since confirmed", "Changed since somebody decided"],
  [/(days|time) in place/i, "dwell time", "Median time in place"],
  [/shrunken/i, "Rates adjusted for small numbers (shrinkage estimate)", "Shrunken rates"],
  [/lines? .*\bset aside/i, "rejected lines, held for repair", "Repaired a line that was set aside"],
];

/** Every text that a person reads, by where it is: the catalogues of the pages and the words of the contract. */
function texts(): [string, string][] {
  const ofPages = Object.entries((i18next.store.data[language] ?? {}) as Record<string, Record<string, string>>);
  const shared: Record<string, Record<string, string>> = {
    ...{ absenceKinds, caseDecisions, caseLists, caseStates, determinationOutcomes, dispositions, findingKinds },
    ...{ limitRules, onsets, permissions, roles, sexes },
    figures: flat(figureWords, ["label", "unit"]),
    gaps: flat(gapWords, ["one", "several", "remedy"]),
    problems: flat(problems, ["title", "remedy"]),
    policy: Object.fromEntries(
      policyRules.map((rule) => [
        rule,
        ruleSentence(defaultPolicy, rule, { number: 2, ward: "3E", fromDay: "2026-11-01" }),
      ]),
    ),
  };
  return [...ofPages, ...Object.entries(shared)].flatMap(([name, list]) =>
    Object.entries(list).map(([key, text]): [string, string] => [`${name}.${key}`, text]),
  );
}

function flat(list: Record<string, object>, fields: readonly string[]): Record<string, string> {
  return Object.fromEntries(
    Object.entries(list).flatMap(([key, item]) =>
      fields.map((field) => [`${key}.${field}`, String((item as Record<string, unknown>)[field])]),
    ),
  );
}

/** Where a text says one of the words, with what to write; names between braces and names of files are no text. */
function findings(all: readonly [string, string][], words: readonly Term[]): string[] {
  return all.flatMap(([where, text]) => {
    const read = text.replaceAll(/\{\{?\w+\}?\}|\b[\w-]+\.csv\b/g, "…");
    return words.filter(([old]) => old.test(read)).map(([old, write]) => `${where}: “${read}” (${old}): ${write}`);
  });
}

describe("the texts of the product", () => {
  it("come from every catalogue and from the contract", () => {
    expect(catalogues.length).toBeGreaterThan(40);
    const places = texts().map(([where]) => where);
    expect(places).toEqual(
      expect.arrayContaining(["round.care", "gaps.setting-missing.one", "problems.not-found.title"]),
    );
    expect(places.length).toBeGreaterThan(1_500);
  });

  it("use plain American clinical English", () => {
    expect(findings(texts(), unsaid)).toEqual([]);
  });

  it("have one name for each thing", () => {
    expect(findings(texts(), names)).toEqual([]);
  });

  it.each([...unsaid, ...names])("refuse %s", (...term) => {
    expect(findings([["before", term[2]]], [term])).toHaveLength(1);
  });
});
