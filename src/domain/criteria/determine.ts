import { afterDeath } from "./after-death.ts";
import { type Attempt, stepOf } from "./attempt.ts";
import type { Determination, Step, Subject } from "./determination.ts";
import type { Edition } from "./edition.ts";
import { eventOf } from "./event-of.ts";
import { dayWords } from "./in-words.ts";
import { attemptInAll } from "./merge-worlds.ts";
import type { PossibleCulture } from "./possible-cultures.ts";
import type { CultureVerdict } from "./rule-kinds.ts";
import { bySubject } from "./subject-order.ts";
import type { SurveillanceTimeline } from "./surveillance-timeline.ts";
import { type Candidate, sweepRepeats } from "./sweep-repeats.ts";
import { type World, worldsOf } from "./world.ts";

/**
 * What an edition says of every urine specimen of a patient, and of every finding in urine where the edition takes
 * those: in the order of days. Works on facility days alone; the sentences of a derivation name wards by their number
 * as `ward 7`. Never throws for what a record can hold: contradictions and gaps give `cannot-tell` or `set-aside`.
 */
export function determine(timeline: SurveillanceTimeline, edition: Edition): Determination[] {
  const worlds = worldsOf(timeline, edition);
  const [world] = worlds;
  if (!world) throw new Error("a timeline has at least one world");
  const candidates = anchorsOf(timeline, edition, world).map((anchor) => candidateOf(anchor, worlds));
  sweepRepeats(candidates, worlds);
  const undetermined = candidates.filter(({ outcome }) => outcome === "cannot-tell" || outcome === "pending");
  return candidates.map((one) => eventOf(one, undetermined, world));
}

/** One line of a determination: outcome, criterion, day, onset, catheter and ward. Two alike read the same. */
export function summaryOf({ outcome, event, repeatOf }: Determination): string {
  if (repeatOf) return `${outcome} of the event by the culture of ${dayWords(repeatOf.day)}`;
  if (!event) return outcome;
  const { criterion, dateOfEvent, onset, deviceAssociated, wardId } = event;
  const device = deviceAssociated ? "catheter-associated" : "not catheter-associated";
  return `${outcome}, ${criterion}, ${dayWords(dateOfEvent)}, ${onset}, ${device}, ${wardId === null ? "no ward" : `ward ${wardId}`}`;
}

/** An anchor and, for a specimen, what its culture is worth. */
interface Anchor {
  readonly subject: Subject;
  readonly culture: CultureVerdict | null;
}

function anchorsOf(timeline: SurveillanceTimeline, edition: Edition, world: World): Anchor[] {
  const specimens = timeline.specimens
    .filter(({ kind }) => kind === "urine")
    .map((one): Anchor => {
      const subject = { kind: "specimen", id: one.id, day: one.collected.day } as const;
      return { subject, culture: edition.culture.judge(one, world) };
    });
  const findings = timeline.findings
    .filter(({ present, when }) => present && edition.anchors.includes("finding") && when.day <= timeline.knownThrough)
    .map(({ id, when }): Anchor => ({ subject: { kind: "finding", id, day: when.day }, culture: null }));
  return [...specimens, ...findings].sort((a, b) => bySubject(a.subject, b.subject));
}

function candidateOf({ subject, culture }: Anchor, worlds: readonly World[]): Candidate {
  const cultures = culture === null ? null : possibleOf(culture, worlds);
  const asked = { anchor: subject, cultures, questions: culture?.questions ?? [], evidenceFrom: null };
  const base = { subject, asked, repeatOf: null, added: [], closes: culture?.closes ?? false };
  if (culture !== null && culture.outcome !== "usable" && cultures?.length === 0) {
    return { ...base, outcome: culture.outcome, met: null, steps: [cultureStep(culture, worlds)] };
  }
  const { outcome, met, steps } = attemptInAll(worlds, asked);
  const first = culture === null ? [] : [cultureStep(asFarAsItMatters(culture, outcome), worlds)];
  return { ...base, closes: outcome === "not-usable", outcome, met, steps: [...first, ...steps] };
}

/** In editions that take more than a culture, one that is not usable may still be a part of other evidence. */
function possibleOf({ outcome, possible }: CultureVerdict, [world]: readonly World[]): readonly PossibleCulture[] {
  const isStillEvidence = outcome === "not-usable" && (world?.edition.anchors.includes("finding") ?? false);
  return isStillEvidence ? [{ culture: null, answers: [[]] }] : possible;
}

/** A culture of which something is not known, where the answer is the same whatever that is. */
function asFarAsItMatters(culture: CultureVerdict, outcome: Attempt["outcome"]): CultureVerdict {
  if (culture.outcome !== "cannot-tell" || outcome === "cannot-tell") return culture;
  const sentence = culture.sentence.replace(/\.$/, "; the answer is the same either way.");
  return { ...culture, status: "noted", sentence };
}

function cultureStep(culture: CultureVerdict, [world]: readonly World[]): Step {
  const { edition } = world as World;
  return culture.isAfterDeath ? stepOf(afterDeath, { ...culture, status: "held" }) : stepOf(edition.culture, culture);
}
