import { z } from "zod";
import { determinationOutcome, onset, stepStatus } from "../culture-words.ts";
import { day } from "../day.ts";
import { id } from "../wire.ts";

const subject = z
  .strictObject({ kind: z.enum(["specimen", "finding"]), id, day })
  .describe("What is determined: a urine specimen by its day of collection");

const range = z.strictObject({ first: day, last: day }).describe("Both days included");

const step = z
  .strictObject({
    rule: z.string().describe("The rule that the sentence is of"),
    status: stepStatus,
    day: day.nullable(),
    sentence: z.string(),
    sources: z.array(z.string()).describe("Where the rule is from"),
    evidence: z.array(
      z.strictObject({
        kind: z.enum(["specimen", "organism", "sign", "finding", "catheter", "stay", "ward", "patient"]),
        id: z.int(),
      }),
    ),
    nearest: z.string().nullable().describe("Of what does not hold: the recorded evidence that came nearest"),
    lookUp: z.string().nullable().describe("Of what cannot be told: what to look up"),
  })
  .meta({ id: "DerivationStep" });

const event = z
  .strictObject({
    criterion: z.string(),
    dateOfEvent: day,
    firstElementDay: day,
    window: z.strictObject({ first: day, last: day, usableFrom: day }),
    hospitalDay: z.int().describe("1 is the first day on an inpatient ward"),
    catheterDay: z.int().nullable().describe("Null: no indwelling urethral catheter was in place on the date of event"),
    onset,
    deviceAssociated: z.boolean(),
    isCauti: z.boolean().describe("Healthcare-associated and device-associated: it counts against catheter-days"),
    repeatTimeframe: range,
    bloodstreamPeriod: range.nullable(),
    wardId: id.nullable().describe("The location of attribution; null when it was present on admission"),
    pathogens: z.array(z.string()),
    addedPathogens: z.array(z.string()).describe("Of repeats"),
    secondaryBloodstream: z.array(id).describe("Blood specimens by which a bloodstream infection is secondary"),
    bloodstreamWaiting: z.array(id).describe("Blood specimens of the period whose result is not known yet"),
  })
  .meta({ id: "SurveillanceEvent" });

const evidence = z.strictObject({
  kind: z.enum(["specimen", "organism", "sign", "finding", "catheter", "stay", "ward", "patient"]),
  id: z.int(),
});

const hinge = z
  .strictObject({
    option: z.string(),
    point: z.string(),
    reading: z.string().describe("In force"),
    otherReading: z.string(),
    otherAnswer: z.string().describe("What the other reading would give"),
    changesCauti: z.boolean(),
    setAside: z.string().nullable().describe("Evidence that the reading in force does not use, in words"),
    evidence: z.array(evidence),
  })
  .meta({ id: "Hinge" });

export const determination = z
  .strictObject({
    subject,
    editionId: z.string(),
    outcome: determinationOutcome,
    event: event.nullable(),
    repeatOf: subject.nullable(),
    dependsOn: z.array(subject).describe("Undetermined subjects that may turn this event into a repeat of theirs"),
    closes: z
      .boolean()
      .describe("Certain whatever is not known: no growth, unusable or withdrawn; it closes automatically"),
    otherReading: z.string().nullable(),
    hinges: z.array(hinge).describe("Open points of which another reading gives another answer"),
    derivation: z.array(step).describe("The sentences, in order"),
  })
  .meta({ id: "Determination" });
