import type { listEditions as listEndpoint, readEdition as readEndpoint } from "../../../shared/api/editions.ts";
import { determinationCaution } from "../../../shared/culture-words.ts";
import { type EditionId, editionId } from "../../../shared/edition-words.ts";
import type { OutputOf } from "../../../shared/endpoint.ts";
import {
  determineWithHinges,
  type Edition,
  type Example,
  type Rule,
  rulesOf,
  sourceText,
  storyWords,
  timelineOf,
} from "../../domain/criteria/index.ts";
import { dayText } from "../../domain/days/day-number.ts";
import { editionNamed } from "../../domain/editions/index.ts";

type Answer = OutputOf<typeof readEndpoint>;

/** The editions of the definitions that are held here. */
export function listEditions(): OutputOf<typeof listEndpoint> {
  const editions = editionId.options.map((id) => {
    const { title, source, inForce } = held(id);
    return { editionId: id, title, source: sourceText(source), inForce: inForceTold(inForce) };
  });
  return { editions };
}

/** Editions told before: what an edition says changes with the program alone, and its examples take a while to work out. */
const toldBefore = new Map<EditionId, Answer>();

/** An edition as a whole: its rules, each with the examples that test it, and its readings of open points. */
export function readEdition({ editionId: id }: { readonly editionId: EditionId }): Answer {
  const told = toldBefore.get(id) ?? editionTold(id);
  toldBefore.set(id, told);
  return told;
}

function editionTold(id: EditionId): Answer {
  const edition = held(id);
  return {
    ...{ editionId: id, title: edition.title, caution: determinationCaution },
    ...{ source: sourceText(edition.source), inForce: inForceTold(edition.inForce) },
    rules: rulesOf(edition).map(ruleTold),
    openPoints: edition.openPoints.map(({ point, reading, why, confidence, otherReading }) => {
      return { point, reading, why, confidence, otherReading };
    }),
  };
}

/** An edition of the closed list. */
function held(id: string): Edition {
  const edition = editionNamed(id);
  if (!edition) throw new Error(`the edition ${id} is named and not held`);
  return edition;
}

function ruleTold(rule: Rule): Answer["rules"][0] {
  const { id, title, says, sources, inForce, examples } = rule;
  return {
    ...{ ruleId: id, title, says, sources: sources.map(sourceText), inForce: inForceTold(inForce) },
    examples: examples.map((example) => exampleTold(rule, example)),
  };
}

/** An example with what the derivation of its story says by the rule, worked out as for a patient. */
function exampleTold({ id }: Rule, { title, editionId: inEdition, status, story }: Example) {
  const [first] = determineWithHinges(timelineOf(story), held(inEdition));
  const steps = first?.derivation.filter(({ rule }) => rule === id) ?? [];
  const sentences = steps.map(({ sentence }) => sentence);
  return { title, editionId: inEdition, story: storyWords(story), status, sentences };
}

function inForceTold({ from, to }: Edition["inForce"]) {
  return { from: dayText(from), to: to === null ? null : dayText(to) };
}
