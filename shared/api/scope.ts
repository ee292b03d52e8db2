import { z } from "zod";
import { month } from "../day.ts";
import { editionId } from "../edition-words.ts";
import { endpoint } from "../endpoint.ts";
import { id, idInPath, instant, reason, version } from "../wire.ts";

const months = {
  fromMonth: month,
  toMonth: month.nullable().describe("The last month; null: until further notice"),
};

/** Which wards are watched, in which months, by which definitions. */
export const listScope = endpoint({
  method: "GET",
  path: "/scope",
  summary: "List which wards are under surveillance, in which months",
  permission: "see-wards",
  wards: "facility",
  reply: "json",
  output: z
    .strictObject({
      scopes: z
        .array(
          z.strictObject({
            ...{ scopeId: id, wardId: id, ...months, version, recordedAt: instant, recordedBy: id },
            edition: z.string().describe("The edition of the definitions; of old scopes any text"),
            isHeld: z.boolean().describe("Whether that edition is held here; if not, somebody has to choose another"),
          }),
        )
        .describe("By ward, then by month"),
    })
    .meta({ id: "Scopes" }),
  errors: [],
});

/** A ward comes under surveillance. */
export const watchWard = endpoint({
  method: "POST",
  path: "/scope",
  summary: "Put a ward under surveillance for some months",
  effect: "creates",
  permission: "set-wards",
  wards: "ward",
  reply: "json",
  body: {
    ...{ wardId: id, ...months },
    edition: editionId.describe("Whose definitions: of that family, each culture is determined by the one of its day"),
  },
  output: z.strictObject({ scopeId: id }).meta({ id: "WardWatched" }),
  errors: ["end-before-start", "scope-overlaps"],
});

const watched = z.strictObject({ scopeId: id, version }).meta({ id: "WatchChanged" });

/** The last month of a watch changes: it ends, or goes on. */
export const endWatch = endpoint({
  method: "POST",
  path: "/wards/{wardId}/scope/{scopeId}/last-month",
  summary: "Change the last month in which a ward is under surveillance",
  effect: "updates",
  permission: "set-wards",
  wards: "ward",
  reply: "json",
  params: { wardId: idInPath, scopeId: idInPath },
  body: { toMonth: months.toMonth, reason },
  output: watched,
  errors: ["end-before-start", "scope-overlaps"],
});

/** A watch that was recorded in error. */
export const voidWatch = endpoint({
  method: "POST",
  path: "/wards/{wardId}/scope/{scopeId}/void",
  summary: "Void a surveillance of a ward that was recorded in error",
  effect: "updates",
  permission: "set-wards",
  wards: "ward",
  reply: "json",
  params: { wardId: idInPath, scopeId: idInPath },
  body: { reason },
  output: watched,
  errors: [],
});
