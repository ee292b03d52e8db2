import type { Met } from "./attempt.ts";
import type { Step } from "./determination.ts";
import { dayWords } from "./in-words.ts";
import type { Rule } from "./rule.ts";
import type { World } from "./world.ts";

/** What follows from a criterion that is met, as sentences: date, onset, device, ward. */
export function tellMet(met: Met, world: World): Step[] {
  return [dateStep(met, world), onsetStep(met, world), deviceStep(met, world), wardStep(met, world)];
}

function step(rule: Rule, status: Step["status"], met: Met, sentence: string): Step {
  return { rule: rule.id, status, day: met.dateOfEvent, sentence, evidence: [], nearest: null, lookUp: null };
}

function dateStep(met: Met, { edition }: World): Step {
  const { dateOfEvent, firstElementDay } = met;
  const { dayOf } = edition.date;
  const why =
    dateOfEvent === firstElementDay
      ? `, the day of ${dayOf}`
      : `: ${dayOf}, on ${dayWords(firstElementDay)}, lies before the first inpatient day`;
  return step(edition.date, "held", met, `The date of event is ${dayWords(dateOfEvent)}${why}.`);
}

function onsetStep(met: Met, { edition }: World): Step {
  const { dateOfEvent, episode, onset } = met;
  const number = dateOfEvent - episode.firstDay + 1;
  const where = number > 0 ? `hospital day ${number}` : "a day before the first inpatient day";
  const isOwn = onset === "healthcare-associated";
  const sentence = `${dayWords(dateOfEvent)} is ${where}: the infection is ${isOwn ? "healthcare-associated" : "present on admission"}.`;
  return step(edition.onset, isOwn ? "noted" : "held", met, sentence);
}

function deviceStep(met: Met, world: World): Step {
  const { dateOfEvent, isAssociated, episode } = met;
  const { edition } = world;
  const days = world.eligibility(episode);
  const number = days.get(dateOfEvent);
  const before = days.get(dateOfEvent - 1);
  const count =
    number !== undefined
      ? ` It was catheter day ${number}.`
      : before !== undefined
        ? ` The day before was catheter day ${before}.`
        : "";
  const { held, failed } = edition.device.tells;
  const sentence = `The infection is ${isAssociated ? "" : "not "}catheter-associated: on ${dayWords(dateOfEvent)} ${isAssociated ? held : failed}.${count}`;
  return step(edition.device, isAssociated ? "held" : "noted", met, sentence);
}

function wardStep(met: Met, { edition }: World): Step {
  const { wardId, onset, dateOfEvent } = met;
  if (onset === "present-on-admission") {
    return step(edition.attribution, "noted", met, "An infection that was present on admission belongs to no ward.");
  }
  if (wardId !== null) {
    const told = step(edition.attribution, "held", met, `The infection belongs to ward ${wardId}.`);
    return { ...told, evidence: [{ kind: "ward", id: wardId }] };
  }
  const sentence = `The patient was on no inpatient ward on ${dayWords(dateOfEvent)} or the day before: no ward can be named.`;
  const lookUp = "Look up where the patient was, and whether the time off the wards is right.";
  return { ...step(edition.attribution, "cannot-tell", met, sentence), lookUp };
}
