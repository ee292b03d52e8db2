import { dayWords } from "./in-words.ts";
import { sameOrganism } from "./match-organism.ts";
import type { CriterionFacts, UsableCulture } from "./rule-kinds.ts";
import { isTooLate } from "./signs-in-window.ts";
import type { GrownOrganism, Specimen } from "./surveillance-timeline.ts";
import type { World } from "./world.ts";

/** Blood of a window as an element: what matches, in the order of days; what is not known yet; why nothing matches. */
export interface MatchingBlood {
  readonly matching: readonly Specimen[];
  readonly waiting: readonly Specimen[];
  readonly why: string;
  readonly nearest: string | null;
}

/** Blood specimens that were taken for diagnosis or treatment and count, in the order of days. */
export function bloodOf(world: World): Specimen[] {
  return world.timeline.specimens
    .filter(({ kind, method, status, collected }) => {
      return kind === "blood" && isForDiagnosis(method) && status !== "withdrawn" && !isTooLate(world, collected.day);
    })
    .sort((a, b) => a.collected.day - b.collected.day || a.id - b.id);
}

/** A specimen that was taken to screen, and the tip of a catheter, decide nothing. */
function isForDiagnosis(method: Specimen["method"]): boolean {
  return method !== "screening" && method !== "catheter-tip";
}

/** Whether the laboratory has said its last word on a specimen. */
export function isSettled({ status }: Specimen): boolean {
  return status === "final" || status === "corrected";
}

/** Blood in the window that matches a pathogen of the urine culture; commensals need two specimens. */
export function matchingBlood(facts: CriterionFacts, culture: UsableCulture): MatchingBlood {
  const { window, world } = facts;
  const all = bloodOf(world);
  const blood = all.filter(({ collected: { day } }) => day >= window.usableFrom && day <= window.last);
  const settled = blood.filter(isSettled);
  const matching = new Set<Specimen>();
  let isLonelyCommensal = false;
  for (const specimen of settled) {
    for (const organism of specimen.organisms.filter((one) => matches(one, culture.pathogens))) {
      if (!organism.identity.isCommensal) matching.add(specimen);
      else if (world.edition.options.abutiCommensals && hasPartner(specimen, organism, settled)) matching.add(specimen);
      else isLonelyCommensal = true;
    }
  }
  const waiting = blood.filter(
    (one) => !isSettled(one) || one.organisms.some(({ identity }) => identity.group === null),
  );
  const why = isLonelyCommensal
    ? "the matching organism is a common commensal, in only one blood specimen"
    : "no blood specimen in the window grew a matching bacterium";
  return { matching: [...matching], waiting, why, nearest: nearestBlood(all, blood, culture) };
}

function matches({ identity }: GrownOrganism, pathogens: readonly GrownOrganism[]): boolean {
  return identity.group === "bacterium" && pathogens.some((one) => sameOrganism(one.identity, identity));
}

/** Another specimen with the same commensal on the same or the next or the previous calendar day (from memory). */
function hasPartner(specimen: Specimen, { identity }: GrownOrganism, settled: readonly Specimen[]): boolean {
  return settled.some(
    (other) =>
      other.id !== specimen.id &&
      Math.abs(other.collected.day - specimen.collected.day) <= 1 &&
      other.organisms.some((one) => sameOrganism(one.identity, identity)),
  );
}

function nearestBlood(all: readonly Specimen[], inWindow: readonly Specimen[], culture: UsableCulture): string | null {
  const outside = all.find(
    (one) => !inWindow.includes(one) && isSettled(one) && one.organisms.some((o) => matches(o, culture.pathogens)),
  );
  return outside
    ? `Nearest: blood of ${dayWords(outside.collected.day)} grew a matching organism outside of the window.`
    : null;
}
