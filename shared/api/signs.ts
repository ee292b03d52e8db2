import { z } from "zod";
import { signFinding, signName } from "../culture-words.ts";
import { day } from "../day.ts";
import { endpoint } from "../endpoint.ts";
import type { ProblemCode } from "../problems.ts";
import { id, idInPath, reason, timeText, version } from "../wire.ts";
import { confirm } from "./catheters.ts";

const signChanged = z.strictObject({ signId: id, version }).meta({ id: "SignChanged" });

const time = z
  .string()
  .regex(/^([01]\d|2[0-3]):[0-5]\d$/, "write the time of day as HH:MM")
  .describe("HH:MM, local to the facility; left out where nobody knows the hour");
const temperature = z
  .string()
  .max(20, "write one temperature")
  .describe("As it was measured, such as 38.4 °C or 101.1 °F; °C without a unit");
const lastDay = day.describe("Of a chart review (not-documented): its last day, else the day alone");
const readAt = timeText.describe(
  "Of a chart review (not-documented): when the chart was read, else now; no later day counts",
);
const otherCause = z.boolean().describe("Another cause of it was recognized");

const signFaults: readonly ProblemCode[] = [
  "in-the-future",
  "time-unreadable",
  "time-does-not-exist",
  "outside-surveillance-days",
  "sign-contradicts",
  "out-of-bounds",
  "unusual-value",
];

export const recordSigns = endpoint({
  method: "POST",
  path: "/patients/{patientId}/signs",
  summary: "Record what was found of signs of infection on a day, or not documented in a chart that was reviewed",
  effect: "creates",
  permission: "record-care",
  wards: "patient",
  reply: "json",
  params: { patientId: idInPath },
  body: {
    day,
    signs: z
      .array(
        z.strictObject({
          sign: signName,
          time: time.optional(),
          finding: signFinding,
          temperature: temperature.optional(),
          otherCause: otherCause.optional(),
        }),
      )
      .min(1, "give at least one sign")
      .max(100),
    lastDay: lastDay.optional(),
    readAt: readAt.optional(),
    confirm: confirm.optional(),
  },
  output: z.strictObject({ signIds: z.array(id) }).meta({ id: "SignsStored" }),
  errors: signFaults,
});

export const correctSign = endpoint({
  method: "POST",
  path: "/signs/{signId}/corrections",
  summary: "Correct a sign; what it said is kept",
  effect: "updates",
  permission: "record-care",
  wards: "sign",
  reply: "json",
  params: { signId: idInPath },
  body: {
    day: day.optional(),
    time: time.nullable().optional(),
    finding: signFinding.optional(),
    temperature: temperature.nullable().optional(),
    otherCause: otherCause.optional(),
    lastDay: lastDay.nullable().optional(),
    readAt: readAt.optional(),
    confirm: confirm.optional(),
    reason,
  },
  output: signChanged,
  errors: [...signFaults, "entry-voided"],
});

export const voidSign = endpoint({
  method: "POST",
  path: "/signs/{signId}/void",
  summary: "Void a sign that was recorded in error",
  effect: "updates",
  permission: "record-care",
  wards: "sign",
  reply: "json",
  params: { signId: idInPath },
  body: { reason },
  output: signChanged,
  errors: ["entry-voided"],
});
