import type { OrganismGroup } from "../../../shared/culture-words.ts";
import { dayWords, listWords } from "./in-words.ts";
import { saysNoGrowth } from "./match-organism.ts";
import { limitCfuPerMl, mostSpecies, possibleCultures, questionsOf, speciesOf } from "./possible-cultures.ts";
import { countText, type ReadCount, reaches } from "./read-count.ts";
import type { CultureVerdict } from "./rule-kinds.ts";
import { isTooLate } from "./signs-in-window.ts";
import type { GrownOrganism, Specimen } from "./surveillance-timeline.ts";
import type { World } from "./world.ts";

/**
 * What a urine specimen is worth where these groups can be pathogens. What is not known of it is tried every way:
 * `cannot-tell` has every way in which it can turn out, with the questions that lead there.
 */
export function judgeCulture(specimen: Specimen, world: World, groups: readonly OrganismGroup[]): CultureVerdict {
  const closed = closedByReport(specimen, world) ?? surelyUnusable(specimen, world, groups);
  if (closed) return closed;
  const questions = questionsOf(specimen, world, groups);
  const possible = possibleCultures(specimen, questions, { world, groups });
  const gaps = [...new Set(questions.map(({ gap }) => gap))];
  const openWords = `cannot be judged: ${listWords(gaps, "and")}`;
  if (possible === null) {
    const lookUp = [...new Set(questions.map((one) => one.lookUp))].join(" ");
    return verdict(specimen, "cannot-tell", openWords, lookUp);
  }
  const usable = possible.flatMap(({ culture }) => (culture === null ? [] : [culture]));
  const [first] = usable;
  if (!first) {
    const names = listWords(unknownNames(specimen), "and");
    return verdict(specimen, "not-usable", `cannot be used, whatever ${names} is and however much grew`);
  }
  if (usable.length < possible.length) {
    return { ...verdict(specimen, "cannot-tell", openWords), possible, questions };
  }
  const pathogens = first.pathogens.map(({ name, count }) => `${name}, ${countText(count)}`);
  return { ...verdict(specimen, "usable", `can be used: ${listWords(pathogens, "and")}`), possible, questions };
}

/** Why a culture cannot be used, where that is so whatever is not known of it; null otherwise. */
function surelyUnusable(specimen: Specimen, world: World, groups: readonly OrganismGroup[]): CultureVerdict | null {
  const { organisms } = specimen;
  const not = (what: string) => verdict(specimen, "not-usable", `cannot be used: ${what}`);
  const flora = organisms.find(({ identity }) => identity.group === "mixed-flora");
  if (flora) return not(`“${flora.name}” is mixed flora`);
  const surely = speciesOf(
    organisms.filter(({ identity }) => identity.group !== null),
    world,
  );
  if (surely > mostSpecies) return not(`it grew ${surely} species, more than ${mostSpecies}`);
  const candidates = organisms.filter(({ identity: { group } }) => group === null || groups.includes(group));
  const [shown] = candidates;
  if (!shown) return not(noPathogenWords(organisms));
  if (candidates.some(({ count }) => reaches(count, limitCfuPerMl) !== "no")) return null;
  const unknown = unknownNames(specimen);
  if (unknown.length > 0)
    return not(`nothing in it reached 100,000 CFU/ml, so it does not matter what ${listWords(unknown, "and")} is`);
  return not(`${shown.name} with ${countText(shown.count)} is not at least 100,000 CFU/ml`);
}

function noPathogenWords(organisms: readonly GrownOrganism[]): string {
  const names = [...new Set(organisms.map(({ name }) => name))];
  const are = names.length > 1 ? "are no urinary pathogens" : "is no urinary pathogen";
  return `${listWords(names, "and")} ${are} for this purpose`;
}

function unknownNames({ organisms }: Specimen): string[] {
  const unknown = organisms.filter(({ identity }) => identity.group === null);
  return [...new Set(unknown.map(({ name }) => `“${name}”`))];
}

/** What the state of the report alone decides; null when what grew has to be looked at. */
function closedByReport(specimen: Specimen, world: World): CultureVerdict | null {
  const { status, method, organisms, collected } = specimen;
  if (status === "withdrawn")
    return { ...verdict(specimen, "set-aside", "was withdrawn by the laboratory"), closes: true };
  if (collected.day > world.timeline.knownThrough) {
    return verdict(specimen, "set-aside", "is dated in the future", "Correct the time of collection.");
  }
  if (isTooLate(world, collected.day)) {
    return { ...verdict(specimen, "set-aside", "was collected after death and is not used"), isAfterDeath: true };
  }
  if (method === "catheter-tip")
    return verdict(specimen, "not-usable", "cannot be used: it is the tip of a catheter, which is no urine specimen");
  if (method !== "culture")
    return verdict(specimen, "not-usable", "cannot be used: only a culture for diagnosis counts");
  if (status === "pending") return verdict(specimen, "pending", "is pending", "Wait for the laboratory's report.");
  if (status === "preliminary") {
    return verdict(specimen, "pending", "has a preliminary report", "Wait for the laboratory's final report.");
  }
  const grown = organisms.filter(({ identity }) => identity.group !== "no-growth");
  const counted = organisms.find(({ identity, count }) => identity.group === "no-growth" && tellsGrowth(count));
  if (grown.length === 0 && !counted) return verdict(specimen, "negative", "grew nothing");
  if (grown.length === organisms.length) return null;
  const but = counted ? `with ${countText(counted.count)}` : `beside ${grown.map(({ name }) => name).join(", ")}`;
  const what = `cannot be judged: the report says no growth ${but}`;
  return verdict(specimen, "cannot-tell", what, "Ask the laboratory what grew, and correct the specimen.");
}

/** Whether a count contradicts that nothing grew: it may reach the limit, and is no word for nothing. */
function tellsGrowth(count: ReadCount): boolean {
  if (count.kind === "missing") return false;
  return "text" in count ? !saysNoGrowth(count.text) : reaches(count, limitCfuPerMl) !== "no";
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
  const evidence = [{ kind: "specimen", id: specimen.id }] as const;
  const closes = outcome === "negative" || outcome === "not-usable";
  const tried = { possible: [], questions: [] };
  return { outcome, status, day, sentence, evidence, lookUp, closes, isAfterDeath: false, ...tried };
}
