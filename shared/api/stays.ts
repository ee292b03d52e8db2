import { z } from "zod";
import { day } from "../day.ts";
import { endpoint } from "../endpoint.ts";
import type { ProblemCode } from "../problems.ts";
import { id, idInPath, lineText, reason, timeOrDayText, timeText, version } from "../wire.ts";
import { hospitalNumber } from "./patients.ts";

const disposition = lineText(100).nullable();
const changed = z.strictObject({ stayId: id, version }).meta({ id: "StayChanged" });

/** What any change of a stay may be refused for. */
export const stayFaults: readonly ProblemCode[] = [
  "entry-voided",
  "in-the-future",
  "time-unreadable",
  "time-does-not-exist",
  "stay-overlaps",
  "move-overlaps",
  "outside-stay",
  "end-before-start",
];

/** A patient, known or new, arrives on a ward. */
export const admitPatient = endpoint({
  method: "POST",
  path: "/wards/{wardId}/admissions",
  summary: "Admit a patient to a ward",
  effect: "creates",
  permission: "record-care",
  wards: "ward",
  reply: "json",
  params: { wardId: idInPath },
  body: {
    identifier: hospitalNumber.describe("The patient's number in the hospital"),
    birthDay: day.nullable().optional(),
    sex: z.enum(["female", "male", "other", "unknown"]).nullable().optional(),
    number: hospitalNumber.describe("The number of the stay in the hospital"),
    admittedAt: timeText,
    bed: lineText(40).nullable().optional(),
  },
  output: z.strictObject({ patientId: id, stayId: id, wardStayId: id, version }).meta({ id: "Admitted" }),
  errors: [...stayFaults, "stay-number-taken", "ward-closed"],
});

/** The end of a stay. Catheters that are still in are no catheter-days afterwards. */
export const dischargePatient = endpoint({
  method: "POST",
  path: "/stays/{stayId}/discharge",
  summary: "Discharge a patient",
  effect: "updates",
  permission: "record-care",
  wards: "stay",
  reply: "json",
  params: { stayId: idInPath },
  body: { dischargedAt: timeText, disposition: disposition.optional() },
  output: changed,
  errors: [...stayFaults, "already-discharged"],
});

export const cancelDischarge = endpoint({
  method: "POST",
  path: "/stays/{stayId}/discharge/cancel",
  summary: "Take a discharge back",
  effect: "updates",
  permission: "record-care",
  wards: "stay",
  reply: "json",
  params: { stayId: idInPath },
  body: { reason },
  output: changed,
  errors: [...stayFaults, "not-discharged", "ward-closed"],
});

export const correctStay = endpoint({
  method: "POST",
  path: "/stays/{stayId}/corrections",
  summary: "Correct a stay; what it said is kept",
  effect: "updates",
  permission: "record-care",
  wards: "stay",
  reply: "json",
  params: { stayId: idInPath },
  body: {
    number: hospitalNumber.optional(),
    admittedAt: timeOrDayText.optional(),
    dischargedAt: timeOrDayText.nullable().optional(),
    disposition: disposition.optional(),
    reason,
  },
  output: changed,
  errors: [...stayFaults, "stay-number-taken"],
});

export const voidStay = endpoint({
  method: "POST",
  path: "/stays/{stayId}/void",
  summary: "Void a stay that was recorded in error, with everything in it",
  effect: "updates",
  permission: "record-care",
  wards: "stay",
  reply: "json",
  params: { stayId: idInPath },
  body: { reason },
  output: changed,
  errors: ["entry-voided"],
});
