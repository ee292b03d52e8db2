import { refuse } from "../../../shared/problems.ts";
import { type Catheter, type PatientTimeline, type Stay, stands, type WardStay } from "./timeline.ts";

/** The stay of that id that stands. Refuses `not-found` and `entry-voided`. */
export function stayOf(timeline: PatientTimeline, stayId: number): Stay {
  const stay = timeline.stays.find((s) => s.id === stayId);
  if (!stay) return refuse("not-found", "There is no such stay of this patient.", { pointer: "/stayId" });
  if (!stands(stay))
    refuse("entry-voided", "This stay is marked as entered in error.", { pointer: "/stayId", other: `stay ${stayId}` });
  return stay;
}

/** The ward stay of that id that stands, with its stay. Refuses `not-found` and `entry-voided`. */
export function wardStayOf(timeline: PatientTimeline, wardStayId: number): { stay: Stay; wardStay: WardStay } {
  return entryOf(timeline, { id: wardStayId, list: "wardStays", word: "ward stay" }, (stay, wardStay: WardStay) => ({
    stay,
    wardStay,
  }));
}

/** The catheter of that id that stands, with its stay. Refuses `not-found` and `entry-voided`. */
export function catheterOf(timeline: PatientTimeline, catheterId: number): { stay: Stay; catheter: Catheter } {
  return entryOf(timeline, { id: catheterId, list: "catheters", word: "catheter" }, (stay, catheter: Catheter) => ({
    stay,
    catheter,
  }));
}

function entryOf<T extends WardStay | Catheter, R>(
  timeline: PatientTimeline,
  wanted: { id: number; list: "wardStays" | "catheters"; word: string },
  answer: (stay: Stay, entry: T) => R,
): R {
  for (const stay of timeline.stays) {
    const entry = (stay[wanted.list] as readonly (WardStay | Catheter)[]).find((e) => e.id === wanted.id);
    if (!entry) continue;
    if (!stands(entry) || !stands(stay))
      refuse("entry-voided", `This ${wanted.word} is marked as entered in error.`, {
        other: `${wanted.word} ${wanted.id}`,
      });
    return answer(stay, entry as T);
  }
  return refuse("not-found", `There is no such ${wanted.word} of this patient.`);
}
