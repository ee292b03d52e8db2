import { afterAll, beforeAll, expect, it } from "vitest";
import { endpoints } from "../../shared/api/index.ts";
import { signName } from "../../shared/culture-words.ts";
import { day } from "../../shared/day.ts";
import type { Endpoint, InputOf } from "../../shared/endpoint.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { lookedAt } from "./alder-bay.ts";
import { type Bedside, bedsideOf } from "./bedside.ts";
import { type Desk, openDesk } from "./desk.ts";

const { correctSign, readCultures, readDeterminations, recordSigns, recordSpecimen } = endpoints;
const reason = "Read from the wrong line";
const on = (text: string) => day.parse(text);

onEachDatabase("signs of a chart review", (fresh) => {
  let desk: Desk;
  let bed: Bedside;
  beforeAll(async () => {
    desk = await openDesk(await fresh());
    bed = bedsideOf(desk);
  });
  afterAll(() => desk?.close());

  const refused = async <E extends Endpoint>(endpoint: E, input: InputOf<E>) => {
    const { status, errors } = await desk.refused(endpoint, input);
    return [status, ...errors.map(({ code, pointer }) => `${code} ${pointer}`)];
  };
  const signsOf = async (patientId: number) => (await desk.ask(readCultures, { patientId })).signs;
  const today = on("2026-11-18");

  const reviewed = (patientId: number, ...days: [from: string, through: string, readAt: string]) => ({
    ...{ patientId, day: on(days[0]), lastDay: on(days[1]), readAt: days[2] },
    signs: signName.options.map((sign) => ({ sign, finding: "not-documented" }) as const),
  });

  it("that a chart does not document are known up to the day on which it was read", async () => {
    const { patientId } = await bed.admit("REVIEW");
    await desk.ask(recordSpecimen, {
      ...{ patientId, kind: "urine", method: "culture", collectedAt: "2026-11-17T09:00", status: "final" },
      organisms: [{ name: "Escherichia coli", count: ">100000" }],
    });
    const outcome = async () =>
      (await desk.ask(readDeterminations, { patientId, family: "us" })).determinations.map(({ outcome: one }) => one);
    expect(await outcome()).toEqual(["cannot-tell"]);
    await desk.ask(recordSigns, reviewed(patientId, "2026-11-14", "2026-11-20", "2026-11-18T14:00"));
    expect(await outcome()).toEqual(["cannot-tell"]);
    const { signIds } = await desk.ask(
      recordSigns,
      reviewed(patientId, "2026-11-19", "2026-11-20", "2026-11-20T09:00"),
    );
    expect(await outcome()).toEqual(["not-met"]);
    expect((await signsOf(patientId)).find(({ signId }) => signId === signIds[1])).toMatchObject({
      ...{ day: "2026-11-19", lastDay: "2026-11-20", readAt: Date.UTC(2026, 10, 20, 14), at: null },
      ...{ finding: "not-documented", writtenAt: lookedAt },
    });
    const change = { signId: signIds[1] ?? 0, reason };
    await desk.ask(correctSign, { ...change, lastDay: null, readAt: "2026-11-19T23:00", seenVersion: 1 });
    expect(await outcome()).toEqual(["cannot-tell"]);
    await desk.ask(correctSign, { ...change, finding: "absent", seenVersion: 2 });
    expect((await signsOf(patientId)).find(({ signId }) => signId === change.signId)).toMatchObject({
      ...{ finding: "absent", lastDay: null, readAt: null },
    });
  });

  it("of a chart review have days that can be true", async () => {
    const { patientId } = await bed.admit("REVIEWED");
    const two = (...days: [string, string, string]) => {
      const given = reviewed(patientId, ...days);
      return { ...given, signs: given.signs.slice(0, 1) };
    };
    const later = two("2026-11-18", "2026-11-17", "2026-11-17T10:00");
    expect(await refused(recordSigns, later)).toEqual([
      ...[422, "sign-contradicts /lastDay", "sign-contradicts /readAt"],
    ]);
    expect(await refused(recordSigns, two("2026-11-18", "2026-11-21", "2026-11-20T23:00"))).toEqual([
      ...[422, "in-the-future /readAt"],
    ]);
    expect(await refused(recordSigns, two("2026-11-18", "2026-11-21", "2026-11-20T09:00"))).toEqual([
      ...[422, "in-the-future /lastDay"],
    ]);
    const timed = { sign: "urgency", finding: "not-documented", time: "08:00" } as const;
    expect(await refused(recordSigns, { patientId, day: today, signs: [timed] })).toEqual([
      ...[422, "sign-contradicts /signs/0/time"],
    ]);
    const { signIds } = await desk.ask(recordSigns, {
      patientId,
      day: today,
      signs: [{ sign: "urgency", finding: "absent" }],
    });
    const change = { signId: signIds[0] ?? 0, reason, seenVersion: 1 };
    expect(await refused(correctSign, { ...change, lastDay: today })).toEqual([422, "sign-contradicts /lastDay"]);
    expect(await refused(correctSign, { ...change, readAt: "2026-11-19T09:00" })).toEqual([
      422,
      "sign-contradicts /readAt",
    ]);
  });
});
