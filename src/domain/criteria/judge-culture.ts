import type { OrganismGroup } from "../../../shared/culture-words.ts";
import { dayWords, listWords } from "./in-words.ts";
import { countText, reaches } from "./read-count.ts";
import type { CultureVerdict } from "./rule-kinds.ts";
import { isTooLate } from "./signs-in-window.ts";
import type { GrownOrganism, Specimen } from "./surveillance-timeline.ts";
import type { World } from "./world.ts";

/** Colony-forming units per milliliter that a pathogen must reach. */
const limitCfuPerMl = 100_000;
const mostSpecies = 2;

/** What a urine specimen is worth where these groups can be pathogens. */
export function judgeCulture(specimen: Specimen, world: World, groups: readonly OrganismGroup[]): CultureVerdict {
  const closed = closedByReport(specimen, world);
  if (closed) return closed;
  const { organisms } = specimen;
  const flora = organisms.find(({ identity }) => identity.group === "mixed-flora");
  if (flora) return verdict(specimen, "not-usable", `cannot be used: “${flora.name}” is mixed flora`);
  const { yeastCountsAsSpecies } = world.edition.options;
  const isCounted = ({ identity: { group } }: GrownOrganism) => yeastCountsAsSpecies || group !== "yeast-or-mold";
  const unknown = organisms.filter(({ identity }) => identity.group === null);
  const surely = speciesOf(
    organisms.filter((one) => (yeastCountsAsSpecies || one.identity.group !== null) && isCounted(one)),
    world,
  );
  if (surely > mostSpecies)
    return verdict(specimen, "not-usable", `cannot be used: it grew ${surely} species, more than ${mostSpecies}`);
  if (unknown.length > 0) {
    const names = listWords(
      unknown.map(({ name }) => `“${name}”`),
      "and",
    );
    return verdict(
      specimen,
      "cannot-tell",
      `cannot be judged: nobody has said what ${names} is`,
      `Choose a group for ${names}.`,
    );
  }
  return judgeCounts(
    specimen,
    organisms.filter(({ identity: { group } }) => group !== null && groups.includes(group)),
  );
}

function judgeCounts(specimen: Specimen, candidates: readonly GrownOrganism[]): CultureVerdict {
  const [first] = candidates;
  if (!first) {
    const names = listWords(
      specimen.organisms.map(({ name }) => name),
      "and",
    );
    const are =
      new Set(specimen.organisms.map(({ name }) => name)).size > 1
        ? "are no urinary pathogens"
        : "is no urinary pathogen";
    return verdict(specimen, "not-usable", `cannot be used: ${names} ${are} for this purpose`);
  }
  const pathogens = candidates.filter(({ count }) => reaches(count, limitCfuPerMl) === "yes");
  if (pathogens.length > 0) {
    const names = listWords(
      pathogens.map(({ name, count }) => `${name}, ${countText(count)}`),
      "and",
    );
    return { ...verdict(specimen, "usable", `can be used: ${names}`), culture: { specimen, pathogens } };
  }
  const unread = candidates.filter(({ count }) => reaches(count, limitCfuPerMl) === "unknown");
  if (unread.length > 0) {
    const each = (words: (organism: GrownOrganism) => string) => listWords(unread.map(words), "and");
    const what = each(({ name, count }) => `${name} has ${countText(count)}`);
    const grew = each(({ name }) => name);
    return verdict(specimen, "cannot-tell", `cannot be judged: ${what}`, `Ask the laboratory how much ${grew} grew.`);
  }
  const straddling = candidates.find(({ count }) => reaches(count, limitCfuPerMl) === "straddles");
  const lookUp = straddling
    ? `Ask the laboratory whether it confirms at least 100,000 CFU/ml of ${straddling.name}.`
    : null;
  const shown = straddling ?? first;
  return verdict(
    specimen,
    "not-usable",
    `cannot be used: ${shown.name} with ${countText(shown.count)} is not at least 100,000 CFU/ml`,
    lookUp,
  );
}

/** What the state of the report alone decides; null when what grew has to be looked at. */
function closedByReport(specimen: Specimen, world: World): CultureVerdict | null {
  const { status, method, organisms, collected } = specimen;
  if (collected.day > world.timeline.knownThrough) {
    return verdict(specimen, "set-aside", "lies in the future", "Correct the time of collection.");
  }
  if (isTooLate(world, collected.day))
    return verdict(specimen, "set-aside", "was collected after death and is not used");
  if (status === "withdrawn") return verdict(specimen, "set-aside", "was withdrawn by the laboratory");
  if (method !== "culture")
    return verdict(specimen, "not-usable", "cannot be used: only a culture for diagnosis counts");
  if (status === "pending") return verdict(specimen, "pending", "is pending", "Wait for the laboratory's report.");
  if (status === "preliminary") {
    return verdict(specimen, "pending", "has a preliminary report", "Wait for the laboratory's final report.");
  }
  return organisms.length === 0 ? verdict(specimen, "negative", "grew nothing") : null;
}

function speciesOf(organisms: readonly GrownOrganism[], { edition }: World): number {
  if (edition.options.sameSpeciesTwice === "two-organisms") return organisms.length;
  return new Set(organisms.map(({ identity }) => identity.key)).size;
}

function verdict(
  specimen: Specimen,
  outcome: CultureVerdict["outcome"],
  what: string,
  lookUp: string | null = null,
): CultureVerdict {
  const status =
    outcome === "usable" ? "held" : outcome === "cannot-tell" || outcome === "pending" ? "cannot-tell" : "failed";
  const { day } = specimen.collected;
  const sentence = `The urine culture of ${dayWords(day)} ${what}.`;
  return { outcome, status, day, sentence, evidence: [{ kind: "specimen", id: specimen.id }], lookUp, culture: null };
}
