import { z } from "zod";
import { day } from "../day.ts";
import { endpoint } from "../endpoint.ts";
import { absenceKind, catheterKind, wardSetting } from "../vocabulary.ts";
import { id, idInPath, instant, version } from "../wire.ts";
import { noHour } from "./entries.ts";

const wardNow = z
  .strictObject({
    wardId: id,
    code: z.string(),
    name: z.string(),
    setting: wardSetting.nullable().describe("What the ward is for; null when nobody said"),
    patients: z.int().describe("On the ward now, or with a bed held there during a procedure"),
    catheters: z.int().describe("Rows of the ward's round"),
    due: z.int().describe("Rows whose review is due and not overdue"),
    overdue: z.int().describe("Rows whose review is overdue"),
    pastThreshold: z.int(),
    doubtful: z.int().describe("Rows that nobody has seen for longer than the policy allows"),
  })
  .meta({ id: "WardNow" });

/** The wards as they are now: figures only, no patients. */
export const readWardsNow = endpoint({
  method: "GET",
  path: "/wards/now",
  summary: "Read how many patients and catheters the wards have now, and what is due",
  permission: "see-counts",
  wards: "facility",
  reply: "json",
  heavy: true,
  output: z.strictObject({ at: instant, day, wards: z.array(wardNow).describe("By code") }).meta({ id: "WardsNow" }),
  errors: [],
});

/** Where a patient can be moved to: any ward of the facility that is open. */
export const listDestinations = endpoint({
  method: "GET",
  path: "/wards/destinations",
  summary: "List the wards that a patient can be moved to",
  permission: "record-care",
  wards: "none",
  reply: "json",
  output: z
    .strictObject({
      wards: z
        .array(z.strictObject({ wardId: id, code: z.string(), name: z.string(), setting: wardSetting.nullable() }))
        .describe("By code"),
    })
    .meta({ id: "Destinations" }),
  errors: [],
});

const who = {
  patientId: id,
  identifier: z.string().describe("The patient's number in the hospital"),
  stayId: id,
  stayVersion: version,
  stayNumber: z.string(),
  wardStayId: id,
  wardStayVersion: version,
  bed: z.string().nullable(),
  since: instant.describe("Since when on this ward"),
  noHour,
};

const present = z
  .strictObject({
    ...who,
    cameFrom: id.nullable().describe("The ward before; null: admitted here"),
    arrivedToday: z.boolean(),
    bedHeld: z.boolean().describe("Away for a procedure; the bed is held"),
    catheters: z
      .array(
        z.strictObject({
          catheterId: id,
          version,
          kind: catheterKind,
          insertedAt: instant.nullable(),
          inPlaceOnArrival: z.boolean(),
          noHour,
        }),
      )
      .describe("In place now"),
  })
  .meta({ id: "WardPatient" });

const left = z
  .strictObject({
    ...who,
    leftAt: instant,
    kind: z.enum(["moved", "discharged", "absent"]),
    absence: absenceKind.nullable().describe("Why the patient is away; null when nobody said, or the patient is not"),
    toWardId: id.nullable().describe("Where to; null when to no ward"),
  })
  .meta({ id: "LeftPatient" });

/** Who is on a ward, who came today and who left lately. The view is recorded. */
export const readWardPatients = endpoint({
  method: "GET",
  path: "/wards/{wardId}/patients",
  summary: "Read a ward's patients, today's arrivals and who left in the last 72 hours; the view is recorded",
  permission: "see-patients",
  wards: "ward",
  reply: "json",
  params: { wardId: idInPath },
  output: z
    .strictObject({
      wardId: id,
      at: instant,
      day,
      patients: z.array(present).describe("By bed"),
      left: z.array(left).describe("The last to leave first; whoever came back is not among them"),
    })
    .meta({ id: "WardPatients" }),
  errors: [],
});
