import { determinationOutcomes, onsets } from "../../../shared/culture-words.ts";
import { type Determination, rulesOf } from "../criteria/index.ts";
import { editionNamed } from "../editions/index.ts";
import { type WardCodes, withWardCodes } from "./ward-codes.ts";

/** The line of a determination for people: its outcome and its criterion in words, its ward by code. */
export function summaryWords(
  { summary, outcome, editionId }: { readonly summary: string; readonly outcome: string; readonly editionId: string },
  codes: WardCodes,
): string {
  const words = new Map<string, string>(Object.entries(determinationOutcomes));
  const rest = summary.startsWith(outcome) ? summary.slice(outcome.length) : `: ${summary}`;
  const said = `${words.get(outcome) ?? "Entered in error"}${rest}`;
  const criteria = editionNamed(editionId)?.criteria ?? [];
  const named = criteria.reduce((text, { id, title }) => text.replace(`, ${id},`, `, ${title},`), said);
  const begun = Object.entries(onsets).reduce(
    (text, [id, label]) => text.replace(`, ${id},`, `, ${label.toLowerCase()},`),
    named,
  );
  return withWardCodes(begun, codes);
}

/**
 * What is reported of a determination beside its line: organisms, those of repeats too, and blood. Two that are reported
 * otherwise read otherwise with it.
 */
export function reportedWords({ event }: Pick<Determination, "event">): string {
  if (event === null) return "";
  const { pathogens, addedPathogens, secondaryBloodstream, bloodstreamPeriod } = event;
  const names = [...pathogens, ...addedPathogens];
  const organisms = `. Organisms: ${names.length === 0 ? "none" : names.join(", ")}`;
  // An edition without such a period says nothing of blood.
  if (bloodstreamPeriod === null) return organisms;
  const blood =
    secondaryBloodstream.length === 1
      ? "1 blood specimen"
      : `${secondaryBloodstream.length === 0 ? "no" : secondaryBloodstream.length} blood specimens`;
  return `${organisms}. Secondary bloodstream infection: ${blood}`;
}

/** The title of a criterion of an edition. */
export function criterionTitle(editionId: string, criterion: string): string {
  const edition = editionNamed(editionId);
  return (edition && rulesOf(edition).find(({ id }) => id === criterion)?.title) ?? criterion;
}
