import { z } from "zod";
import { auditAction } from "../audit-words.ts";
import { day } from "../day.ts";
import { endpoint } from "../endpoint.ts";
import { id, idInPath, instant, instantText } from "../wire.ts";

const cursor = z
  .string()
  .regex(/^[\w-]{1,200}$/, "send the cursor that the page before gave")
  .describe("Where the page begins: the next of the page before");
const limit = z
  .codec(z.string().regex(/^([1-9]\d?|1\d\d|200)$/, "write a whole number from 1 to 200"), z.int(), {
    decode: Number,
    encode: String,
  })
  .meta({ type: "integer", minimum: 1, maximum: 200, pattern: undefined });
const dayOrInstant = z.union([day, instantText], {
  error: "write a day as YYYY-MM-DD, or a time in UTC as YYYY-MM-DDTHH:MM:SSZ",
});
const paging = { after: cursor.optional(), limit: limit.optional().describe("50 when left out") };

const entry = z
  .strictObject({
    auditId: z.string(),
    at: instant,
    personId: id,
    personName: z.string(),
    action: auditAction,
    words: z.string().describe("The action in words"),
    patientIds: z.array(id),
    details: z.record(z.string(), z.unknown()).describe("Numbers of entries, versions and the reason"),
    sealNumber: z.int().nullable().describe("Its place in the sealed chain; null while it waits, for a second at most"),
  })
  .meta({ id: "AuditEntry" });
const page = z.strictObject({ entries: z.array(entry).describe("Newest first"), next: z.string().nullable() });

/** Who did or saw what. The search is itself recorded. */
export const searchAudit = endpoint({
  method: "GET",
  path: "/audit",
  summary: "Search the audit trail by person, patient, action and period; the search is recorded",
  permission: "see-audit",
  wards: "facility",
  reply: "json",
  query: {
    personId: idInPath.optional(),
    patientId: idInPath.optional(),
    action: auditAction.optional(),
    from: dayOrInstant.optional().describe("From the beginning of this day of the facility, or from this time on"),
    to: dayOrInstant
      .optional()
      .describe("To the end of this day of the facility, or up to this time, which is left out"),
    ...paging,
  },
  output: page.meta({ id: "AuditPage" }),
  errors: ["cursor-unreadable", "not-found"],
});

/** Who saw or changed a patient's record. */
export const readAccess = endpoint({
  method: "GET",
  path: "/patients/{patientId}/access",
  summary: "Read who saw or changed a patient's record; the view is recorded",
  permission: "see-audit",
  wards: "patient",
  reply: "json",
  params: { patientId: idInPath },
  query: paging,
  output: page.meta({ id: "AccessPage" }),
  errors: ["cursor-unreadable"],
});

/** Whether the sealed chain is whole. */
export const verifyAudit = endpoint({
  method: "GET",
  path: "/audit/verification",
  summary: "Recompute the sealed chain of the audit trail",
  permission: "see-audit",
  wards: "none",
  reply: "json",
  heavy: true,
  output: z
    .strictObject({
      sealed: z.int().describe("Entries in the chain"),
      waiting: z.int().describe("Entries that are not sealed yet"),
      whole: z.boolean(),
      firstFault: z.strictObject({ number: z.int(), detail: z.string() }).nullable(),
      head: z
        .strictObject({ number: z.int(), hash: z.string() })
        .nullable()
        .describe("The last link: keep it elsewhere, and a chain that was cut off shows"),
    })
    .meta({ id: "AuditVerification" }),
  errors: [],
});

/** What changed since a cursor, for pages and for devices that were offline. */
export const listChanges = endpoint({
  method: "GET",
  path: "/changes",
  summary: "List what changed in patients' records since a cursor",
  permission: "see-changes",
  wards: "facility",
  reply: "json",
  query: {
    after: z
      .codec(z.string().regex(/^\d{1,9}$/, "write the cursor in digits, 0 to begin"), z.int(), {
        decode: Number,
        encode: String,
      })
      .meta({ type: "integer", minimum: 0, maximum: 999_999_999, pattern: undefined })
      .optional()
      .describe("The next of the answer before; 0 for everything; left out, it is told from where on to ask"),
    limit: limit.optional(),
  },
  output: z
    .strictObject({
      changes: z.array(
        z.strictObject({
          cursor: z.int(),
          at: instant,
          personId: id,
          action: auditAction,
          patientIds: z.array(id).describe("Those within the person's reach"),
          entries: z
            .record(z.string(), z.int())
            .describe("Numbers of the entries that were changed, and their version"),
        }),
      ),
      next: z.int().describe("The cursor to go on from; it moves on also when nothing is to be seen"),
      more: z.boolean().describe("Whether there is more to ask for at once"),
      waiting: z
        .boolean()
        .describe("Whether changes were written that have no place in the list yet: they get it within a second"),
    })
    .meta({ id: "Changes" }),
  errors: [],
});
