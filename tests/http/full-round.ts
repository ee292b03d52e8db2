import { endpoints } from "../../shared/api/index.ts";
import type { InputOf } from "../../shared/endpoint.ts";
import { defaultPolicy } from "../../src/domain/policy/default-policy.ts";
import type { Desk } from "./desk.ts";
import { fullRecord } from "./inputs.ts";

const { admitPatient, insertCatheter, removeCatheter, reviewCatheter } = endpoints;
const filled = { sizeFr: 14, balloonMl: 10, record: fullRecord };

type Kind = InputOf<typeof insertCatheter>["kind"];

export interface Placed {
  readonly patientId: number;
  readonly stayId: number;
  /** The catheter that was put in last. */
  readonly catheterId: number;
}

/** Puts patients with catheters on wards. Times are local to Alder Bay Hospital. */
export function placing(desk: Desk) {
  const insert = async (stayId: number, insertedAt: string, indication = "perioperative", kind?: Kind) => {
    const input = { stayId, insertedAt, indication, kind: kind ?? "indwelling-urethral", ...filled } as const;
    return (await desk.ask(insertCatheter, input)).catheterId;
  };
  /** Each admitted at the first of the times; the others are insertions, with a removal before each but the first. */
  const place = async (bed: string, admittedAt: string, ...times: string[]): Promise<Placed> => {
    const wardId = desk.hospital.wards["3E"];
    const { patientId, stayId } = await desk.ask(admitPatient, {
      ...{ wardId, identifier: `BED-${bed}`, number: `BED-${bed}`, admittedAt, bed },
    });
    let catheterId = 0;
    for (const [i, at] of times.entries())
      if (i % 2 === 0) catheterId = await insert(stayId, at);
      else await desk.ask(removeCatheter, { catheterId, removedAt: at, seenVersion: 1 });
    return { patientId, stayId, catheterId };
  };
  const review = (catheterId: number, at: string, outcome: "keep" | "ask" | "remove", indication?: string) =>
    desk.ask(reviewCatheter, { catheterId, at, outcome, ...(indication === undefined ? {} : { indication }) });
  return { insert, place, review };
}

/**
 * Ward 3E on 20 November 2026 at 10:00, with a policy of its own from that day on: reviewed by 09:00. One patient a bed:
 *
 *  2  inserted 19 Nov: day 2, not reviewed
 *  3  inserted 18 Nov: day 3, kept today at 08:30
 *  4  inserted 18 Nov, exchanged 19 Nov: day 3, the prescriber asked today and silent
 *  5  came with a catheter today, nobody said why: day 1
 *  6  suprapubic
 *  7  inserted 18 Nov: day 3, to be removed since 08:00 today
 *  8  inserted today: day 1; at a procedure since 08:00, the bed held
 *  9  inserted 15 Nov, out 17 Nov, new one 19 Nov: 18 Nov was a full day without, so day 2
 * 10  inserted 17 Nov: day 4, seen by nobody since
 * 11  inserted 18 Nov, moved to 4N today at 08:00
 * 12  inserted 18 Nov, on leave since 08:00 today
 */
export async function fillRound(desk: Desk) {
  const { insert, place, review } = placing(desk);
  const wards = desk.hospital.wards;
  const beds = {
    2: await place("2", "2026-11-19T07:00", "2026-11-19T08:00"),
    3: await place("3", "2026-11-18T07:00", "2026-11-18T09:00"),
    4: await place("4", "2026-11-18T07:00", "2026-11-18T08:00", "2026-11-19T10:00", "2026-11-19T10:30"),
    5: await place("5", "2026-11-20T07:00"),
    6: await place("6", "2026-11-18T07:00"),
    7: await place("7", "2026-11-18T07:00", "2026-11-18T11:00"),
    8: await place("8", "2026-11-20T06:00", "2026-11-20T06:30"),
    9: await place("9", "2026-11-15T07:00", "2026-11-15T08:00", "2026-11-17T10:00", "2026-11-19T10:00"),
    10: await place("10", "2026-11-17T07:00", "2026-11-17T08:00"),
    11: await place("11", "2026-11-18T07:00", "2026-11-18T13:00"),
    12: await place("12", "2026-11-18T07:00", "2026-11-18T13:00"),
  };
  const policy = { ...defaultPolicy, reviewDueAt: "09:00" };
  const ofWard = { wardId: wards["3E"], fromDay: "2026-11-20" as never, body: policy, replaces: 0, reason: "Agreed" };
  await desk.ask(endpoints.setPolicy, ofWard);
  await desk.ask(endpoints.recordCatheterOnArrival, {
    ...{ stayId: beds[5].stayId, kind: "indwelling-urethral", foundAt: "2026-11-20T07:10" },
  });
  await insert(beds[6].stayId, "2026-11-19T08:00", "perioperative", "suprapubic");
  await review(beds[3].catheterId, "2026-11-20T08:30", "keep", "retention-or-obstruction");
  await review(beds[4].catheterId, "2026-11-20T08:00", "ask");
  await review(beds[7].catheterId, "2026-11-20T08:00", "remove");
  const away = { leftAt: "2026-11-20T08:00" };
  await desk.ask(endpoints.recordAbsence, { stayId: beds[8].stayId, ...away, kind: "procedure" });
  await desk.ask(endpoints.recordAbsence, { stayId: beds[12].stayId, ...away, kind: "leave" });
  await desk.ask(endpoints.movePatient, {
    ...{ stayId: beds[11].stayId, movedAt: "2026-11-20T08:00", toWardId: wards["4N"], bed: "1" },
  });
  return beds;
}
