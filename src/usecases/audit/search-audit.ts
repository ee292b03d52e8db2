import type { searchAudit as endpoint, readAccess as readAccessEndpoint } from "../../../shared/api/audit.ts";
import { type AuditAction, auditActions } from "../../../shared/audit-words.ts";
import type { Day } from "../../../shared/day.ts";
import type { InputOf, OutputOf } from "../../../shared/endpoint.ts";
import { refuse } from "../../../shared/problems.ts";
import { dayMs, dayNumber, type Instant } from "../../domain/days/day-number.ts";
import { type Zone, zoneNamed } from "../../domain/days/zone.ts";
import { type AuditPlace, type AuditQuestion, findAudit } from "../../store/audit-search.ts";
import { facility } from "../../store/facilities.ts";
import { findPatient } from "../../store/patients.ts";
import type { Read } from "../../store/store.ts";
import type { Act } from "../act.ts";
import { view } from "../view.ts";

type Page = OutputOf<typeof endpoint>;

const usualLimit = 50;

/**
 * Entries of the facility's audit trail, newest first, a page at a time. The search is itself recorded.
 * Refuses `cursor-unreadable`, and `not-found` for a patient who is not there.
 */
export function searchAudit(act: Act, input: InputOf<typeof endpoint>): Promise<Page> {
  const { personId, patientId, action, from, to, after, limit } = input;
  return view(act, async (read, seen) => {
    const zone = zoneNamed((await facility(read, act.actor.facilityId)).zone);
    const page = await pageOf(read, act, {
      ...{ personId, action, after, limit },
      survivorId: patientId === undefined ? undefined : await survivorOf(read, act, patientId),
      from: from === undefined ? undefined : beginOf(from, zone),
      to: to === undefined ? undefined : endOf(to, zone),
    });
    const details = { personId, patientId, action, from, to };
    const patientIds = patientId === undefined ? [] : [patientId];
    seen({ action: "search-audit", patientIds, details });
    return page;
  });
}

/** Who saw or changed a patient's record; the view is recorded. Refuses `cursor-unreadable` and `not-found`. */
export function readAccess(act: Act, input: InputOf<typeof readAccessEndpoint>): Promise<Page> {
  const { patientId, after, limit } = input;
  return view(act, async (read, seen) => {
    const survivorId = await survivorOf(read, act, patientId);
    const page = await pageOf(read, act, { survivorId, after, limit });
    seen({ action: "view-access", patientIds: [patientId], details: { patientId } });
    return page;
  });
}

const isDay = (text: string): text is Day => !text.includes("T");

function beginOf(text: string, zone: Zone): Instant {
  return isDay(text) ? zone.firstInstantFrom(dayNumber(text) * dayMs) : Date.parse(text);
}

/** Ranges of days hold both ends, stretches of time leave the end out. */
function endOf(text: string, zone: Zone): Instant {
  return isDay(text) ? zone.firstInstantFrom((dayNumber(text) + 1) * dayMs) : Date.parse(text);
}

async function survivorOf(read: Read, act: Act, patientId: number): Promise<number> {
  return (await findPatient(read, act.actor.facilityId, { patientId })).survivorId;
}

/** What is asked, with the page as it was sent. */
type Asked = Omit<AuditQuestion, "facilityId" | "after" | "limit"> & {
  readonly after?: string | undefined;
  readonly limit?: number | undefined;
};

async function pageOf(read: Read, act: Act, { after, limit = usualLimit, ...asked }: Asked): Promise<Page> {
  const place = after === undefined ? undefined : placeOf(after);
  const { facilityId } = act.actor;
  // One more than shown tells whether there is a next page.
  const found = await findAudit(read, { ...asked, facilityId, after: place, limit: limit + 1 });
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
