import { z } from "zod";
import { day } from "../day.ts";
import { endpoint } from "../endpoint.ts";
import { wardSetting } from "../vocabulary.ts";
import { id, idInPath, instant, lineText, reason, version } from "../wire.ts";

const ward = z
  .strictObject({
    wardId: id,
    code: z.string(),
    name: z.string(),
    type: z.string().nullable(),
    setting: wardSetting.nullable().describe("What the ward is for; null when nobody said"),
    beds: z.int().nullable(),
    openedDay: day.nullable(),
    closedDay: day.nullable(),
    namedOnly: z.boolean().describe("Nobody described the ward: it was named in a file of moves"),
  })
  .meta({ id: "Ward" });

/** The wards that the person may see, as they are today. */
export const listWards = endpoint({
  method: "GET",
  path: "/wards",
  summary: "List the wards",
  permission: "see-wards",
  wards: "facility",
  reply: "json",
  output: z.strictObject({ wards: z.array(ward).describe("By code") }).meta({ id: "Wards" }),
  errors: [],
});

const name = lineText(100);
const type = lineText(100).nullable().describe("Such as medical or surgical, in your own words; null when nobody said");
const beds = z.int().min(0).max(9_999).nullable();
const changed = z.strictObject({ wardId: id }).meta({ id: "WardChanged" });

/** A new ward, described from the day it opened. */
export const addWard = endpoint({
  method: "POST",
  path: "/wards",
  summary: "Add a ward",
  effect: "creates",
  permission: "set-wards",
  wards: "facility",
  reply: "json",
  body: {
    code: lineText(100).describe("The short name by which moves and files call the ward"),
    ...{ name, type, beds },
    setting: wardSetting,
    openedDay: day.nullable().describe("The ward's first day; null: it was always there"),
  },
  output: changed,
  errors: ["ward-code-taken"],
});

/** What a ward is from a day on. Days that this touches are counted anew. */
export const describeWard = endpoint({
  method: "POST",
  path: "/wards/{wardId}/descriptions",
  summary: "Say what a ward is from a day on; its days since then are counted anew",
  effect: "creates",
  permission: "set-wards",
  wards: "ward",
  reply: "json",
  params: { wardId: idInPath },
  body: {
    ...{ name, type, beds },
    setting: wardSetting,
    fromDay: day.describe("Replaces what was said from this very day on; other days on which something began stay"),
    reason,
  },
  output: changed,
  errors: [],
});

/** The last day of a ward. */
export const closeWard = endpoint({
  method: "POST",
  path: "/wards/{wardId}/closing",
  summary: "Close a ward with the end of a day, or open it again",
  effect: "creates",
  permission: "set-wards",
  wards: "ward",
  reply: "json",
  params: { wardId: idInPath },
  body: {
    closedDay: day.nullable().describe("The ward's last day; null: it is open after all"),
    reason: reason.optional(),
  },
  output: changed,
  errors: ["end-before-start", "ward-in-use"],
});

/** Two wards turn out to be one, as after a misspelling in a file. */
export const mergeWards = endpoint({
  method: "POST",
  path: "/wards/{wardId}/merge",
  summary:
    "Merge a ward into another one: its stays, counts and surveillance move, and the days of both are counted again",
  effect: "creates",
  permission: "set-wards",
  wards: "ward",
  reply: "json",
  params: { wardId: idInPath },
  body: { intoWardId: id.describe("The ward that it becomes"), reason },
  output: changed,
  errors: [
    ...(["not-found", "same-ward", "ward-gone", "ward-closed", "scope-overlaps"] as const),
    ...(["ward-counts-overlap", "ward-has-policy"] as const),
  ],
});

/** A ward that was never one. */
export const voidWard = endpoint({
  method: "POST",
  path: "/wards/{wardId}/void",
  summary: "Mark a ward without any entry as entered in error; its code is free again",
  effect: "creates",
  permission: "set-wards",
  wards: "ward",
  reply: "json",
  params: { wardId: idInPath },
  body: { reason },
  output: changed,
  errors: ["ward-has-entries"],
});

/** What a ward is and was, with who said so. */
export const readWardHistory = endpoint({
  method: "GET",
  path: "/wards/{wardId}/settings",
  summary: "Read what a ward is and was, each from a day on",
  permission: "see-wards",
  wards: "ward",
  reply: "json",
  params: { wardId: idInPath },
  output: z
    .strictObject({
      wardId: id,
      code: z.string(),
      openedDay: day.nullable(),
      closedDay: day.nullable(),
      namedOnly: z.boolean(),
      settings: z
        .array(
          z.strictObject({
            fromDay: day,
            name: z.string(),
            type: z.string().nullable(),
            setting: wardSetting.nullable(),
            beds: z.int().nullable(),
            byHand: z.boolean().describe("Somebody said so here; files change nothing of such a ward"),
            reason: z.string().nullable(),
            version: version.describe("Counts what was said for this very day"),
            recordedAt: instant,
            recordedBy: id,
          }),
        )
        .describe("In the order of days"),
      merged: z
        .array(
          z.strictObject({
            ...{ wardId: id, code: z.string(), reason: z.string().nullable() },
            ...{ mergedAt: instant, mergedBy: id },
          }),
        )
        .describe("Wards that were merged into this one, by code: their codes mean this ward in later files"),
    })
    .meta({ id: "WardHistory" }),
  errors: [],
});
