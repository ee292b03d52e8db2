import { determinationOutcomes, onsets, signNames } from "../../../shared/culture-words.ts";
import { stepOf } from "./attempt.ts";
import { couldMatter } from "./could-matter.ts";
import type { Determination, Evidence, Hinge } from "./determination.ts";
import { determine, summaryOf } from "./determine.ts";
import type { Edition, EditionOptions, OpenPoint } from "./edition.ts";
import { daysWords, dayWords, listWords } from "./in-words.ts";
import type { SurveillanceTimeline } from "./surveillance-timeline.ts";
import { temperatureText } from "./temperature.ts";
import { worldsOf } from "./world.ts";

/**
 * {@link determine}, and for each determination the open points of the edition of which another reading would give
 * another answer. What hinges on a reading does not close without a person.
 */
export function determineWithHinges(timeline: SurveillanceTimeline, edition: Edition): Determination[] {
  const determined = determine(timeline, edition);
  const [world] = worldsOf(timeline, edition);
  if (!world) throw new Error("a timeline has at least one world");
  const hinges = determined.map((): Hinge[] => []);
  for (const point of edition.openPoints) {
    if (!couldMatter(point.option, { timeline, edition, world, determined })) continue;
    for (const { value, words } of othersOf(point, edition)) {
      const options = { ...edition.options, [point.option]: value };
      const otherwise = determine(timeline, { ...edition, options });
      determined.forEach((one, i) => {
        const other = otherwise[i];
        if (other && answerOf(one) !== answerOf(other))
          hinges[i]?.push(hingeOf({ point, words, one, other }, timeline, edition));
      });
    }
  }
  return determined.map((one, i) => withHinges(one, hinges[i] ?? [], edition));
}

/** The readings of a point that are not in force: where the default is not, that is one of them. */
function othersOf(point: OpenPoint, { options, defaults }: Edition) {
  const inForce = options[point.option];
  const isNumber = typeof inForce === "number";
  if (!point.otherValues.includes(inForce))
    return point.otherValues.map((value) => ({
      value,
      words: isNumber ? daysWords(Number(value)) : point.otherReading,
    }));
  return [{ value: defaults[point.option], words: point.reading }];
}

/** All that a determination reports: two that differ in it are another answer. */
function answerOf(one: Determination): string {
  const { pathogens = [], addedPathogens = [], secondaryBloodstream = [] } = one.event ?? {};
  return JSON.stringify([summaryOf(one), [...pathogens, ...addedPathogens].sort(), secondaryBloodstream]);
}

interface Compared {
  readonly point: OpenPoint;
  readonly words: string;
  readonly one: Determination;
  readonly other: Determination;
}

function hingeOf({ point, words, one, other }: Compared, timeline: SurveillanceTimeline, edition: Edition): Hinge {
  const isElement = ({ kind }: Evidence) => kind === "sign" || kind === "specimen" || kind === "finding";
  const evidence = usedBy(other).filter(
    (a) => isElement(a) && !usedBy(one).some((b) => a.kind === b.kind && a.id === b.id),
  );
  const named = evidence.flatMap((each) => evidenceWords(each, timeline) ?? []);
  const isCounted = ({ outcome, event }: Determination) => outcome === "event" && (event?.isCauti ?? false);
  return {
    option: point.option,
    point: point.point,
    reading: words === point.reading ? point.otherReading : point.reading,
    otherReading: words,
    otherAnswer: answerWords(other, edition),
    changesCauti: isCounted(one) !== isCounted(other),
    setAside: named.length === 0 ? null : listWords(named, "and"),
    evidence,
  };
}

/** Entries on which what holds in a derivation rests. */
function usedBy({ derivation }: Determination): Evidence[] {
  return derivation.flatMap(({ status, evidence }) => (status === "held" ? evidence : []));
}

function evidenceWords({ kind, id }: Evidence, { signs, specimens }: SurveillanceTimeline): string | null {
  if (kind === "sign") {
    const sign = signs.find((one) => one.id === id);
    if (!sign) return null;
    const name =
      sign.temperature === null
        ? signNames[sign.sign].toLowerCase()
        : `temperature of ${temperatureText(sign.temperature)}`;
    const found = sign.review === null ? name : `${name}, not documented,`;
    return `${found} on ${dayWords(sign.when.day)}`;
  }
  const specimen = kind === "specimen" ? specimens.find((one) => one.id === id) : undefined;
  return specimen ? `${specimen.kind} culture of ${dayWords(specimen.collected.day)}` : null;
}

/** What a determination comes to, as words for people. */
function answerWords(one: Determination, { criteria }: Edition): string {
  const { outcome, event, repeatOf } = one;
  if (repeatOf) return `no new event, but a repeat of the event by the culture of ${dayWords(repeatOf.day)}`;
  if (!event) return determinationOutcomes[outcome].toLowerCase();
  const [title = ""] = (criteria.find(({ id }) => id === event.criterion)?.title ?? event.criterion).split(":");
  const device = event.deviceAssociated ? "catheter-associated" : "not catheter-associated";
  const ward = event.wardId === null ? [] : [`ward ${event.wardId}`];
  const blood = event.secondaryBloodstream.length;
  const secondary = blood === 0 ? [] : [`${blood === 1 ? "one blood specimen" : `${blood} blood specimens`} secondary`];
  const name = `${title} of ${dayWords(event.dateOfEvent)}`;
  return [name, onsets[event.onset].toLowerCase(), device, ...ward, ...secondary].join(", ");
}

function withHinges(one: Determination, hinges: readonly Hinge[], edition: Edition): Determination {
  if (hinges.length === 0) return one;
  const sentences = hinges.map(hingeWords);
  const steps = hinges.map(({ option, evidence }, i) => {
    const sentence = sentences[i] ?? "";
    return stepOf(ruleOf(option, edition), { status: "noted", day: one.subject.day, sentence, evidence });
  });
  const otherReading = sentences.join(" ");
  return { ...one, closes: false, otherReading, hinges, derivation: [...one.derivation, ...steps] };
}

function hingeWords({ point, reading, otherReading, otherAnswer, setAside }: Hinge): string {
  const evidence = setAside === null ? "" : ` Set aside by it: ${setAside}.`;
  return `Open reading: ${point}. In force: ${reading}.${evidence} Other reading: ${otherReading}. It would give: ${otherAnswer}.`;
}

/** The rule beside which an open point is told. */
function ruleOf(option: keyof EditionOptions, edition: Edition) {
  const { culture, device, window, repeat, bloodstream, criteria, others } = edition;
  const criterion = (id: string) => criteria.find((one) => one.id === id) ?? window;
  const other = (id: string) => others.find((one) => one.id === id) ?? window;
  switch (option) {
    case "catheterDaysFrom":
    case "absence":
      return device;
    case "yeastCountsAsSpecies":
    case "sameSpeciesTwice":
      return culture;
    case "abutiCommensals":
      return criterion("abuti");
    case "infantAge":
    case "costovertebralInInfants":
      return criterion("suti-2");
    case "earlyFeverOver65":
      return criterion("suti-1b");
    case "timeframeAcrossStays":
    case "elementInsideTimeframe":
    case "repeatDays":
      return repeat;
    case "bloodstreamPeriodFrom":
      return bloodstream ?? repeat;
    case "readmission":
    case "afterDeath":
      return other(option === "readmission" ? "readmission" : "after-death");
    default:
      return window;
  }
}
