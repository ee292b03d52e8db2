import { z } from "zod";
import { determinationOutcome, stepStatus } from "../culture-words.ts";
import { day, month } from "../day.ts";
import { editionId } from "../edition-words.ts";
import { endpoint } from "../endpoint.ts";
import { id, instant, reason } from "../wire.ts";

const inForce = z.strictObject({ from: day, to: day.nullable().describe("Null: no end is known") });

/** The published editions of the definitions, each as a whole: for reading, and for choosing one. */
export const listEditions = endpoint({
  method: "GET",
  path: "/editions",
  summary: "List the editions of the definitions that are held here",
  permission: "see-facility",
  wards: "none",
  reply: "json",
  output: z
    .strictObject({
      editions: z.array(z.strictObject({ editionId, title: z.string(), source: z.string(), inForce })),
    })
    .meta({ id: "Editions" }),
  errors: [],
});

export const readEdition = endpoint({
  method: "GET",
  path: "/editions/{editionId}",
  summary: "Read an edition: its rules with sources and examples, and its readings of open points",
  permission: "see-facility",
  wards: "none",
  reply: "json",
  params: { editionId },
  output: z
    .strictObject({
      editionId,
      title: z.string(),
      source: z.string(),
      inForce,
      caution: z.string(),
      rules: z.array(
        z.strictObject({
          ruleId: z.string(),
          title: z.string(),
          says: z.string(),
          sources: z.array(z.string()),
          inForce,
          examples: z.array(
            z.strictObject({
              title: z.string(),
              editionId: z.string(),
              story: z.array(z.string()).describe("The patient of the example, in sentences; day 1 is 1 March 2024"),
              status: stepStatus.describe("What the rule's step comes to"),
              sentences: z.array(z.string()).describe("What the derivation says by this rule"),
            }),
          ),
        }),
      ),
      openPoints: z.array(
        z.strictObject({
          point: z.string(),
          reading: z.string(),
          why: z.string(),
          confidence: z.enum(["high", "medium", "low"]),
          otherReading: z.string(),
        }),
      ),
    })
    .meta({ id: "Edition" }),
  errors: [],
});

const readingValue = z.union([z.string().max(40), z.int(), z.boolean()]);

/** The open points of an edition with the readings that can be chosen, and what is chosen here. */
export const listReadings = endpoint({
  method: "GET",
  path: "/editions/{editionId}/readings",
  summary: "List the readings of open points that can be chosen, and those that are chosen here",
  permission: "see-facility",
  wards: "none",
  reply: "json",
  params: { editionId },
  output: z
    .strictObject({
      points: z.array(
        z.strictObject({
          ...{ option: z.string(), point: z.string() },
          readings: z
            .array(z.strictObject({ value: readingValue, words: z.string() }))
            .describe("That of the edition first"),
        }),
      ),
      chosen: z
        .array(
          z.strictObject({
            ...{ option: z.string(), point: z.string(), value: readingValue, reading: z.string(), fromMonth: month },
            ...{ reason: z.string(), recordedAt: instant, recordedBy: id },
          }),
        )
        .describe("In the order of months; each holds until a later one of its point"),
    })
    .meta({ id: "Readings" }),
  errors: [],
});

/** A facility reads an open point otherwise from a month to come. */
export const chooseReading = endpoint({
  method: "POST",
  path: "/editions/{editionId}/readings",
  summary: "Choose another reading of an open point, from a month to come",
  effect: "creates",
  permission: "judge-cases",
  wards: "facility",
  reply: "json",
  params: { editionId },
  body: { option: z.string().max(40), value: readingValue, fromMonth: month, reason },
  output: z.strictObject({ fromMonth: month }).meta({ id: "ReadingChosen" }),
  errors: ["unknown-reading", "reading-not-to-come", "reading-chosen-already"],
});

const read = z.strictObject({ outcome: determinationOutcome, summary: z.string(), isCauti: z.boolean() });

/** Which determinations of days past another edition would make other. Nothing is changed. */
export const compareEditions = endpoint({
  method: "GET",
  path: "/editions/{editionId}/differences/{otherId}",
  summary: "Read which determinations of some days would be other under another edition; the view is recorded",
  permission: "judge-cases",
  wards: "facility",
  reply: "json",
  heavy: true,
  params: { editionId, otherId: editionId },
  query: {
    first: day.describe("The first day of collection"),
    last: day.describe("The last; at most 366 days are compared at once"),
  },
  output: z
    .strictObject({
      compared: z.int().describe("Urine cultures, and findings in urine, that were compared"),
      differences: z.array(
        z.strictObject({
          caseId: id,
          patientId: id,
          subject: z.strictObject({ kind: z.enum(["specimen", "finding"]), id, day }),
          before: read.nullable().describe("Null: the edition does not judge it at all"),
          after: read.nullable(),
        }),
      ),
    })
    .meta({ id: "EditionDifferences" }),
  errors: ["end-before-start", "period-too-long"],
});
