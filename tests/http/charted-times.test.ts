import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { endpoints } from "../../shared/api/index.ts";
import { day } from "../../shared/day.ts";
import type { Endpoint } from "../../shared/endpoint.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { type Desk, openDesk } from "./desk.ts";
import { inputs } from "./inputs.ts";
import { fresh as freshName } from "./situations.ts";
import type { Subjects } from "./subjects.ts";

type Name = keyof typeof endpoints;

/** Every endpoint with a charted time, each with the times that it takes and the entry and field that keeps them. */
const charted: Partial<Record<Name, Readonly<Record<string, string>>>> = {
  admitPatient: { admittedAt: "stay.admittedAt" },
  dischargePatient: { dischargedAt: "stay.dischargedAt" },
  correctStay: { admittedAt: "stay.admittedAt" },
  movePatient: { movedAt: "wardStay.startAt" },
  recordAbsence: { leftAt: "wardStay.endAt", backAt: "wardStay.startAt" },
  correctWardStay: { startAt: "wardStay.startAt", endAt: "wardStay.endAt" },
  insertCatheter: { insertedAt: "catheter.insertedAt" },
  recordCatheterOnArrival: { foundAt: "catheter.lastSeenAt" },
  removeCatheter: { removedAt: "catheter.removedAt" },
  correctCatheter: { insertedAt: "catheter.insertedAt", removedAt: "catheter.removedAt" },
  reviewCatheter: { at: "catheterNote.at" },
  confirmCatheter: { at: "catheterNote.at" },
  recordCareCheck: { at: "catheterNote.at" },
  recordUrineOutput: { at: "catheterNote.at" },
  correctNote: { at: "catheterNote.at" },
  recordSpecimen: { collectedAt: "specimen.collectedAt" },
  correctSpecimen: { collectedAt: "specimen.collectedAt" },
  recordSigns: { readAt: "sign.readAt" },
  correctSign: { readAt: "sign.readAt" },
};

/** The clocks of the hospital went back from 02:00 to 01:00 on 1 November 2026: this local time came twice. */
const repeated = "2026-11-01T01:30";
const earlier = Date.UTC(2026, 10, 1, 5, 30);

const isTime = (name: string) => /^at$|At$/.test(name);

describe("the table of charted times", () => {
  it("has every endpoint that takes one", () => {
    const takers = Object.entries(endpoints).filter(([, { body }]) => Object.keys(body.shape).some(isTime));
    expect(takers.map(([name]) => name).sort()).toEqual(Object.keys(charted).sort());
  });
});

onEachDatabase("a charted time", (fresh) => {
  let desk: Desk;
  beforeAll(async () => {
    desk = await openDesk(await fresh());
  });
  afterAll(() => desk?.close());

  /** A patient of 31 October with a catheter in place and a note about it, for each case. */
  async function someone(name: Name): Promise<Subjects> {
    const { ask, hospital } = desk;
    const [wardId, toWardId] = [hospital.wards["3E"], hospital.wards["4N"]];
    const number = freshName();
    // An admission can only be corrected to a time before the first ward.
    const admittedAt = name === "correctStay" ? "2026-11-01T03:00" : "2026-10-31T20:00";
    const stay = await ask(endpoints.admitPatient, { wardId, identifier: number, number, admittedAt });
    const at = "2026-10-31T21:00";
    const about = { ...stay, wardId, toWardId, otherPatientId: stay.patientId, catheterId: 0, noteId: 0, at };
    const none = {
      importId: 0,
      scopeId: 0,
      sourceId: 0,
      aliasId: 0,
      specimenId: 0,
      signId: 0,
      findingId: 0,
      caseId: 0,
      noneFoundId: 0,
    };
    const subjects: Subjects = { ...about, ...none, fresh: freshName };
    if (name === "correctSpecimen") {
      const specimen = { patientId: stay.patientId, kind: "urine", collectedAt: at, status: "pending" } as const;
      const { specimenId } = await ask(endpoints.recordSpecimen, { ...specimen, method: "culture", organisms: [] });
      return { ...subjects, specimenId };
    }
    if (name === "correctSign") {
      const { signIds } = await ask(endpoints.recordSigns, { ...chartReview(subjects), patientId: stay.patientId });
      return { ...subjects, signId: signIds[0] ?? 0 };
    }
    if (!/Catheter|Care|Urine|Note/.test(name)) return subjects;
    const { catheterId } = await ask(endpoints.insertCatheter, inputs.insertCatheter(subjects));
    const { noteId } = await ask(endpoints.confirmCatheter, { catheterId, at: "2026-10-31T22:00" });
    const free = name === "correctCatheter" ? { noteId, reason: "for another time", seenVersion: 1 } : null;
    if (free) await ask(endpoints.voidNote, free);
    return { ...subjects, catheterId, noteId };
  }

  /** The input of an endpoint with these texts as its times. */
  async function inputWith(name: Name, times: Readonly<Record<string, string>>): Promise<never> {
    const about = await someone(name);
    // Only a chart that was read has a time of reading.
    const review = name === "recordSigns" ? chartReview(about) : {};
    return Object.assign({}, inputs[name](about), review, times) as never;
  }

  const entries = Object.entries(charted) as [Name, Readonly<Record<string, string>>][];

  it.each(entries)("%s: a repeated hour is the earlier instant, and marked", async (name, kept) => {
    const times = Object.fromEntries(Object.keys(kept).map((time) => [time, repeated]));
    const input = await inputWith(name, times);
    const before = await marked(desk);
    await desk.ask(endpoints[name] as Endpoint, input);
    const made = (await marked(desk)).filter((row) => !before.includes(row));
    const fields = Object.values(kept).map((field) => `${field} ${earlier}`);
    expect(made.map((row) => row.split(" of ")[0]).sort()).toEqual(fields.sort());
  });

  it.each(entries)("%s: refuses what does not exist, is unreadable or has not come, by name", async (name, kept) => {
    const [first = ""] = Object.keys(kept);
    const refusedFor = async (text: string) => {
      const { status, errors } = await desk.refused(
        endpoints[name] as Endpoint,
        await inputWith(name, { [first]: text }),
      );
      expect([status, errors.map(({ pointer }) => pointer)]).toEqual([422, [`/${first}`]]);
      return `${errors[0]?.code}: ${errors[0]?.detail}`;
    };
    // The clocks went from 02:00 to 03:00 on 8 March 2026.
    expect(await refusedFor("2026-03-08T02:30")).toMatch(/^time-does-not-exist: .*01:59 to 2026-03-08T03:00/);
    expect(await refusedFor("9.11.2026")).toMatch(/^time-unreadable: /);
    // The hospital's clock says 10:00; clocks of devices may run five minutes ahead.
    const clock = "The clock of the server says 2026-11-20T15:00:00.000Z.";
    expect(await refusedFor("2026-11-20T10:05:01")).toBe(`in-the-future: This time has not come yet. ${clock}`);
  });

  it.each(entries.filter(([, kept]) => Object.keys(kept).length === 1))(
    "%s: may be five minutes ahead",
    async (name, kept) => {
      const times = Object.fromEntries(Object.keys(kept).map((time) => [time, "2026-11-20T10:05"]));
      // The stay begins before it; an admission cannot be moved behind what happened in it.
      if (name === "correctStay") return expect(await refusalCode(name, times)).toBe("outside-stay");
      await desk.ask(endpoints[name] as Endpoint, await inputWith(name, times));
    },
  );

  async function refusalCode(name: Name, times: Readonly<Record<string, string>>): Promise<string> {
    return (await desk.refused(endpoints[name] as Endpoint, await inputWith(name, times))).code;
  }

  it("names all times that are at fault", async () => {
    const times = { leftAt: "2026-03-08T02:30", backAt: "2026-11-21T08:00" };
    const { errors } = await desk.refused(endpoints.recordAbsence, await inputWith("recordAbsence", times));
    expect(errors.map(({ code, pointer }) => `${code} ${pointer}`)).toEqual([
      "time-does-not-exist /leftAt",
      "in-the-future /backAt",
    ]);
  });

  it("given anew leaves no doubt about the one before", async () => {
    const moved = await desk.ask(endpoints.movePatient, await inputWith("movePatient", { movedAt: repeated }));
    const ofMove = async () => (await marked(desk)).filter((row) => row.endsWith(`wardStay ${moved.wardStayId}`));
    expect(await ofMove()).toHaveLength(1);
    const change = { wardStayId: moved.wardStayId, reason: "The second of the two", seenVersion: 1 };
    await desk.ask(endpoints.correctWardStay, { ...change, startAt: "2026-11-01T01:30-05:00" });
    expect(await ofMove()).toEqual([]);
  });
});

/** A chart in which a sign was looked for and is not documented. */
function chartReview({ at }: Pick<Subjects, "at">) {
  return { day: day.parse(at.slice(0, 10)), signs: [{ sign: "urgency" as const, finding: "not-documented" as const }] };
}

/** What is marked as having occurred twice: entry, field and the instant that was taken, and the entry's number. */
async function marked({ hospital: { store } }: Desk): Promise<string[]> {
  const rows = await store.read(async ({ db }) => ({
    stay: await db.stay.findMany(),
    wardStay: await db.wardStay.findMany(),
    catheter: await db.catheter.findMany(),
    catheterNote: await db.catheterNote.findMany(),
    specimen: await db.specimen.findMany(),
    sign: await db.sign.findMany(),
  }));
  return Object.entries(rows).flatMap(([kind, list]) =>
    (list as unknown as Record<string, unknown>[]).flatMap((row) =>
      String(row.marks)
        .split(" ")
        .filter((mark) => mark !== "")
        .map((mark) => {
          const field = mark.replace("repeated-hour:", "");
          return `${kind}.${field} ${(row[field] as Date).getTime()} of ${kind} ${row.id}`;
        }),
    ),
  );
}
