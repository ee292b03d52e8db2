import { createHash } from "node:crypto";
import { afterAll, beforeAll, expect, it } from "vitest";
import { endpoints } from "../../shared/api/index.ts";
import { callForCsv } from "../../shared/call.ts";
import { month } from "../../shared/day.ts";
import type { FigureKey } from "../../shared/figure-words.ts";
import type { MonthReport } from "../../shared/month-report.ts";
import { lastingReport } from "../../src/domain/reports/canonical-text.ts";
import { openStore } from "../../src/store/open-store.ts";
import { keptDocument } from "../../src/store/signed-months.ts";
import { readSignedText as readText } from "../../src/usecases/months/read-signatures.ts";
import { onEachDatabase, type TestDatabase } from "../databases/databases.ts";
import { auditOf } from "../databases/read-back.ts";
import { lookedAt } from "./alder-bay.ts";
import { type Desk, openDesk } from "./desk.ts";
import { inputs } from "./inputs.ts";
import type { Subjects } from "./subjects.ts";

const { admitPatient, dischargePatient, describeWard, insertCatheter, removeCatheter } = endpoints;
const { listSignedMonths, readMonthFigures, readMonthFigureSheet, readMonthSignatures } = endpoints;
const { readSignedMonth, readSignedText, recordNoneFound, signMonth, watchWard } = endpoints;
const october = month.parse("2026-10");
const signature1 = { month: october, number: 1 };
const reason = "Recorded late";
/** What was signed on each database, to be compared. */
const texts: string[] = [];

/** Also after the month was signed. */
const late = { acknowledge: true } as const;

onEachDatabase("a signed month", (fresh) => {
  let database: TestDatabase;
  let desk: Desk;
  beforeAll(async () => {
    database = await fresh();
    desk = await openDesk(database);
    await inOctober("OCT-1", desk.hospital.wards["3E"]);
  });
  afterAll(() => desk?.close());

  /** From 10 October 08:00 to the 13th: 3 patient-days, 2 catheter-days; in place on 3 days, the 10th to the 12th. */
  async function inOctober(identifier: string, wardId: number): Promise<void> {
    const admission = { wardId, identifier, number: identifier, admittedAt: "2026-10-10T08:00", bed: "7" };
    const { stayId } = await desk.ask(admitPatient, admission, late);
    const insertion = inputs.insertCatheter({ stayId, at: "2026-10-10T09:00" } as Subjects);
    const { catheterId } = await desk.ask(insertCatheter, insertion, late);
    await desk.ask(removeCatheter, { catheterId, removedAt: "2026-10-12T09:00", seenVersion: 1 }, late);
    await desk.ask(dischargePatient, { stayId, dischargedAt: "2026-10-13T10:00", seenVersion: 1 }, late);
  }

  const sign = async (said: { seen?: string; replaces?: number; reason?: string | null } = {}) => {
    const { seen } = await desk.ask(readMonthFigures, { month: october });
    return { month: october, seen, replaces: 0, reason: null, ...said };
  };
  const totalOf = ({ total }: MonthReport, key: FigureKey) => total.figures.find((one) => one.key === key)?.value;

  it("is read with its figures, as rows too, by a manager for the own wards", async () => {
    const { report } = await desk.ask(readMonthFigures, { month: october });
    const keys = ["patient_days", "catheter_days", "dwell_median", "insertions", "catheters_open"] as const;
    expect(keys.map((key) => totalOf(report, key))).toEqual([3, 2, 3, 1, null]);
    expect(report.total.insertions.inserters).toEqual([{ inserter: "registered-nurse", count: 1 }]);
    const { report: own } = await desk.ask(readMonthFigures, { month: october }, { person: "manager" });
    expect(own.wards.map(({ code }) => code)).toEqual(["3E"]);
    expect(own.cautions[0]).toMatch(/^Only your units are shown/);
    const headers = { "x-demo-person": String(desk.hospital.people.prevention) };
    const csv = await callForCsv(readMonthFigureSheet, { month: october }, { base: desk.base, headers });
    expect(csv).toContain("3E,Ward 3E,utilization,Device utilization ratio,0.6666666666666666,");
  });

  it("is refused with everything that blocks, each with its remedy", async () => {
    const { status, code, errors } = await desk.refused(signMonth, await sign());
    expect([status, code, errors.map(({ detail }) => detail)]).toEqual([
      ...[409, "month-not-ready"],
      [expect.stringMatching(/^OBS: The setting of this unit is not recorded.* In the settings, describe the unit/)],
    ]);
    const { seen } = await desk.ask(readMonthFigures, { month: month.parse("2026-11") });
    const early = await desk.refused(signMonth, { ...(await sign({ seen })), month: month.parse("2026-11") });
    expect(early.errors[0]?.detail).toMatch(/^The month is not over/);
  });

  it("is signed as it was seen, once, and read again byte for byte, also by the next start", async () => {
    const ward = { name: "Observation", type: null, setting: "outpatient", beds: null, reason } as const;
    await desk.ask(describeWard, { ...ward, wardId: desk.hospital.wards.OBS, fromDay: "2026-01-01" as never });
    const changed = await desk.refused(signMonth, await sign({ seen: "0".repeat(64) }));
    expect([changed.status, changed.code]).toEqual([409, "month-changed"]);
    const { signature } = await desk.ask(signMonth, await sign());
    const { prevention } = desk.hospital.people;
    expect(signature).toMatchObject({ number: 1, signedAt: lookedAt, signedBy: prevention, role: "prevention" });
    const { text, digest } = await desk.ask(readSignedText, { month: october, number: 1 });
    expect(createHash("sha256").update(text).digest("hex")).toBe(digest);
    expect(digest).toBe(signature.digest);
    const { report } = await desk.ask(readMonthFigures, { month: october });
    // A figure of the instant of reading is on the page and in no signed text.
    expect(JSON.parse(text)).toEqual(lastingReport(report));
    expect(text).not.toContain("catheters_open");
    const store = openStore(database.url);
    const actor = { personId: prevention, facilityId: 1, roles: [], wardIds: [] };
    const again = await readText({ store, actor, now: lookedAt }, { month: october, number: 1 });
    await store.close();
    expect(again.text).toBe(text);
    texts.push(text);
    expect(new Set(texts).size, "both databases sign the same bytes").toBe(1);
    const entries = (await auditOf(desk.hospital.store, 1)).filter(({ action }) => action === "sign-month");
    expect(entries.map(({ details }) => details)).toEqual([{ month: october, number: 1 }]);
  });

  it("has a PDF that is made once, kept, and given again byte for byte, also by the next start", async () => {
    const take = async (person: number) => {
      const headers = { accept: "application/pdf", "x-demo-person": String(person) };
      const answer = await fetch(`${desk.base}/api/v1/months/2026-10/document?signature=1`, { headers });
      expect([answer.status, answer.headers.get("content-type")]).toEqual([200, "application/pdf"]);
      return Buffer.from(await answer.arrayBuffer());
    };
    const { prevention, manager } = desk.hospital.people;
    const [one, other] = await Promise.all([take(prevention), take(prevention)]);
    expect(one.subarray(0, 5).toString()).toBe("%PDF-");
    expect(one.equals(other)).toBe(true);
    const store = openStore(database.url);
    const again = await store.read((read) => keptDocument(read, 1, { ...signature1, mediaType: "application/pdf" }));
    await store.close();
    expect(one.equals(Buffer.from(again?.bytes ?? []))).toBe(true);
    expect(again?.digest).toBe(createHash("sha256").update(one).digest("hex"));
    // The manager's is made of the own wards, and stands in nobody's place.
    expect((await take(manager)).equals(one)).toBe(false);
    expect((await take(prevention)).equals(one)).toBe(true);
  }, 60_000);

  it("is not signed again without a reason, a change, or knowledge of the latest signature", async () => {
    const codes = async (said: Parameters<typeof sign>[0]) => (await desk.refused(signMonth, await sign(said))).code;
    expect(await codes({})).toBe("stale-version");
    expect(await codes({ replaces: 1 })).toBe("amendment-reason-missing");
    expect(await codes({ replaces: 1, reason })).toBe("nothing-to-amend");
    expect((await desk.ask(readMonthSignatures, { month: october })).differences).toEqual([]);
  });

  it("shows what was recorded since as differences, and is amended by signing anew", async () => {
    await inOctober("OCT-2", desk.hospital.wards["4N"]);
    const { differences } = await desk.ask(readMonthSignatures, { month: october });
    expect(differences).toContainEqual(
      expect.objectContaining({ ward: "4N", what: "Patient-days", signed: 0, now: 3, figure: "patient_days" }),
    );
    expect(differences).toContainEqual(
      expect.objectContaining({ ward: null, what: "Patient-days", signed: 3, now: 6 }),
    );
    const before = await desk.ask(readSignedMonth, { month: october, number: 1 });
    expect(totalOf(before.report, "patient_days")).toBe(3);
    const amended = await desk.ask(signMonth, await sign({ replaces: 1, reason }));
    expect(amended.signature).toMatchObject({ number: 2, reason });
    const after = await desk.ask(readMonthSignatures, { month: october });
    expect([after.signatures.map(({ number }) => number), after.differences]).toEqual([[1, 2], []]);
    const { months } = await desk.ask(listSignedMonths, {});
    expect(months.map(({ month: of, signatures, signature }) => [of, signatures, signature.number])).toEqual([
      [october, 2, 2],
    ]);
    const missing = await desk.refused(readSignedMonth, { month: october, number: 3 });
    expect([missing.status, missing.code]).toEqual([404, "not-found"]);
  });

  it("is shown to people of a ward for that ward alone, and signed by infection prevention", async () => {
    const person = "bedside" as const;
    const { report } = await desk.ask(readSignedMonth, { month: october, number: 2 }, { person });
    expect([report.wards.map(({ code }) => code), report.total.figures]).toEqual([["3E"], []]);
    await inOctober("OCT-3", desk.hospital.wards["4N"]);
    expect((await desk.ask(readMonthSignatures, { month: october }, { person })).differences).toEqual([]);
    for (const [endpoint, input] of [
      [signMonth, await sign({ replaces: 2, reason })],
      [readSignedText, { month: october, number: 1 }],
    ] as const) {
      expect((await desk.refused(endpoint, input as never, { person })).status).toBe(403);
    }
  });

  it("counts the infections of watched wards, and waits for somebody to say that none were found", async () => {
    const wardId = desk.hospital.wards["3E"];
    const toMonth = october;
    await desk.ask(watchWard, { wardId, fromMonth: october, toMonth, edition: "us-2024" }, late);
    const { report } = await desk.ask(readMonthFigures, { month: october });
    const figure = (key: FigureKey) => report.total.figures.find((one) => one.key === key);
    // 2 catheter-days of the one watched ward; -ln(0.05) is the upper mid-P limit of no event.
    expect(figure("rate")).toMatchObject({ value: 0, numerator: 0, denominator: 2 });
    expect(figure("rate")?.upper).toBeCloseTo((-Math.log(0.05) / 2) * 1_000, 6);
    const refused = await desk.refused(signMonth, await sign({ replaces: 2, reason }));
    expect(refused.errors.map(({ detail }) => detail)).toEqual([
      expect.stringMatching(/^3E: .*“No infection identified”/),
    ]);
    await desk.ask(recordNoneFound, { wardId, month: october });
    const { signature } = await desk.ask(signMonth, await sign({ replaces: 2, reason }));
    expect(signature.number).toBe(3);
  });
});
