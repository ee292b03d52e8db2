import { z } from "zod";
import { day } from "../day.ts";
import { endpoint } from "../endpoint.ts";
import { roundState } from "../round-states.ts";
import { catheterKind } from "../vocabulary.ts";
import { id, idInPath, instant, version } from "../wire.ts";
import { noHour } from "./entries.ts";

const row = z
  .strictObject({
    bed: z.string().nullable(),
    patientId: id,
    identifier: z.string().describe("The patient's number in the hospital"),
    stayId: id,
    catheterId: id,
    version: version.describe("The catheter's version: send it as If-Match with a removal"),
    kind: catheterKind,
    insertedAt: instant.nullable(),
    inPlaceOnArrival: z.boolean(),
    eligibilityDay: z.int().nullable().describe("Goes on across an exchange; null for kinds that are not counted"),
    age: z.strictObject({ days: z.int(), atLeast: z.boolean() }).describe("The age of this catheter in days"),
    indication: z.string().nullable().describe("The one in force; null when none was recorded"),
    lastSeenAt: instant.nullable(),
    noHour,
    dueAt: instant.nullable().describe("By when the day's review is due; null when none is"),
    states: z
      .array(
        z.strictObject({
          state: roundState,
          reason: z.string(),
          policy: z.strictObject({ number: z.int(), wardId: id.nullable(), sentence: z.string() }),
        }),
      )
      .describe("What needs doing first comes first"),
  })
  .meta({ id: "RoundRow" });

/** A ward's catheters on a day with what is due. The view is recorded. */
export const readRound = endpoint({
  method: "GET",
  path: "/wards/{wardId}/round",
  summary: "Read a ward's round: its catheters and what is due; the view is recorded",
  permission: "see-patients",
  wards: "ward",
  reply: "json",
  params: { wardId: idInPath },
  query: { day: day.optional().describe("Today when left out; a past day is shown as it was at its end") },
  output: z
    .strictObject({
      wardId: id,
      day,
      at: instant.describe("The instant that the states hold for"),
      rows: z.array(row).describe("What needs doing first comes first, then by bed"),
      caution: z.string(),
    })
    .meta({ id: "Round" }),
  errors: ["in-the-future"],
});
