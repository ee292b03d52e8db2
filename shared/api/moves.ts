import { z } from "zod";
import { endpoint } from "../endpoint.ts";
import { absenceKind } from "../vocabulary.ts";
import { id, idInPath, lineText, reason, timeOrDayText, timeText, version } from "../wire.ts";
import { stayFaults } from "./stays.ts";

const bed = lineText(40).nullable();
const changed = z.strictObject({ wardStayId: id, version }).meta({ id: "WardStayChanged" });

/** From one ward or bed to another, which may be any ward of the facility. */
export const movePatient = endpoint({
  method: "POST",
  path: "/stays/{stayId}/moves",
  summary: "Move a patient to a ward or bed",
  effect: "creates",
  permission: "record-care",
  wards: "stay",
  reply: "json",
  params: { stayId: idInPath },
  body: { movedAt: timeText, toWardId: id, bed: bed.optional() },
  output: changed,
  errors: [...stayFaults, "not-on-a-ward", "not-found", "already-discharged", "ward-closed"],
});

/** Time off the wards inside a stay. Without a kind it is unknown, and listed until somebody says. */
export const recordAbsence = endpoint({
  method: "POST",
  path: "/stays/{stayId}/absences",
  summary: "Record time off the wards",
  effect: "creates",
  permission: "record-care",
  wards: "stay",
  reply: "json",
  params: { stayId: idInPath },
  body: { leftAt: timeText, backAt: timeText.nullable().optional(), kind: absenceKind.nullable() },
  output: z.strictObject({ wardStayId: id.nullable() }).meta({ id: "AbsenceRecorded" }),
  errors: [...stayFaults, "not-on-a-ward", "already-discharged"],
});

export const correctWardStay = endpoint({
  method: "POST",
  path: "/ward-stays/{wardStayId}/corrections",
  summary: "Correct time on a ward; what it said is kept",
  effect: "updates",
  permission: "record-care",
  wards: "ward-stay",
  reply: "json",
  params: { wardStayId: idInPath },
  body: {
    toWardId: id.optional(),
    bed: bed.optional(),
    startAt: timeOrDayText.optional(),
    endAt: timeOrDayText.nullable().optional(),
    absenceAfter: absenceKind.nullable().optional(),
    reason,
  },
  output: changed,
  errors: [...stayFaults, "not-found", "ward-closed"],
});

export const cancelMove = endpoint({
  method: "POST",
  path: "/ward-stays/{wardStayId}/cancel",
  summary: "Take a move back: the patient stayed where they were",
  effect: "updates",
  permission: "record-care",
  wards: "ward-stay",
  reply: "json",
  params: { wardStayId: idInPath },
  body: { reason },
  output: changed,
  errors: [...stayFaults, "first-ward-stay"],
});

export const voidWardStay = endpoint({
  method: "POST",
  path: "/ward-stays/{wardStayId}/void",
  summary: "Void time on a ward: the patient was not there",
  effect: "updates",
  permission: "record-care",
  wards: "ward-stay",
  reply: "json",
  params: { wardStayId: idInPath },
  body: { reason },
  output: changed,
  errors: ["entry-voided", "first-ward-stay"],
});
