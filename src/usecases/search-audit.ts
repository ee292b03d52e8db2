import type { searchAudit as endpoint, readAccess } from "../../shared/api/audit.ts";
import { type AuditAction, auditActions } from "../../shared/audit-words.ts";
import type { InputOf, OutputOf } from "../../shared/endpoint.ts";
import { refuse } from "../../shared/problems.ts";
import { writeAudit } from "../store/audit.ts";
import { type AuditPlace, type AuditQuestion, findAudit } from "../store/audit-search.ts";
import { findPatient } from "../store/patients.ts";
import type { Tx } from "../store/store.ts";
import { type Act, recording } from "./act.ts";

type Page = OutputOf<typeof endpoint>;

const usualLimit = 50;

/**
 * Entries of the facility's audit trail, newest first, a page at a time. The search is itself recorded.
 * Refuses `cursor-unreadable`, and `not-found` for a patient who is not there.
 */
export function searchAudit(act: Act, input: InputOf<typeof endpoint>): Promise<Page> {
  const { personId, patientId, action, from, to, after, limit } = input;
  return act.store.tx(
    async (tx) => {
      const page = await pageOf(tx, act, {
        ...{ personId, action },
        survivorId: patientId === undefined ? undefined : await survivorOf(tx, act, patientId),
        from: from === undefined ? undefined : Date.parse(from),
        to: to === undefined ? undefined : Date.parse(to),
        after: after === undefined ? undefined : placeOf(after),
        limit: limit ?? usualLimit,
      });
      const details = { personId, patientId, action, from, to };
      await writeAudit(tx, recording(act), { action: "search-audit", details });
      return page;
    },
    { snapshot: true },
  );
}

/** Who saw or changed a patient's record; the view is recorded. Refuses `cursor-unreadable` and `not-found`. */
export function readAccessList(act: Act, input: InputOf<typeof readAccess>): Promise<Page> {
  const { patientId, after, limit } = input;
  return act.store.tx(
    async (tx) => {
      const page = await pageOf(tx, act, {
        survivorId: await survivorOf(tx, act, patientId),
        after: after === undefined ? undefined : placeOf(after),
        limit: limit ?? usualLimit,
      });
      const details = { patientId };
      await writeAudit(tx, recording(act), { action: "view-access", patientIds: [patientId], details });
      return page;
    },
    { snapshot: true },
  );
}

async function survivorOf(tx: Tx, act: Act, patientId: number): Promise<number> {
  return (await findPatient(tx, act.actor.facilityId, { patientId })).survivorId;
}

async function pageOf(tx: Tx, act: Act, question: Omit<AuditQuestion, "facilityId">): Promise<Page> {
  const { limit } = question;
  const found = await findAudit(tx, { ...question, facilityId: act.actor.facilityId, limit: limit + 1 });
  const shown = found.slice(0, limit);
  const last = found.length > limit ? shown.at(-1) : undefined;
  const entries = shown.map(({ id, action, patientIds, ...entry }) => ({
    ...entry,
    auditId: id,
    action: action as AuditAction,
    words: auditActions[action as AuditAction],
    patientIds: [...patientIds],
  }));
  return { entries, next: last ? cursorOf(last) : null };
}

/** Cursors are opaque to whoever sends them. */
function cursorOf({ at, id }: AuditPlace): string {
  return Buffer.from(`${at} ${id}`).toString("base64url");
}

function placeOf(cursor: string): AuditPlace {
  const [, at, id] = /^(\d{1,15}) ([\w-]{1,60})$/.exec(Buffer.from(cursor, "base64url").toString("utf8")) ?? [];
  if (at === undefined || id === undefined)
    return refuse("cursor-unreadable", "This is no cursor of an earlier page.", { pointer: "/after" });
  return { at: Number(at), id };
}
