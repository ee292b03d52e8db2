import { Readable } from "node:stream";
import { parse } from "csv-parse/sync";
import readExcelFile from "read-excel-file/node";
import { afterAll, beforeAll, expect, it } from "vitest";
import { endpoints } from "../../shared/api/index.ts";
import { callForFile } from "../../shared/call.ts";
import { month } from "../../shared/day.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { type Desk, openDesk } from "./desk.ts";
import { inputs } from "./inputs.ts";
import type { Subjects } from "./subjects.ts";

const { describeWard, readMonthDocument, readMonthFigures, signMonth } = endpoints;
const october = month.parse("2026-10");
const xlsx = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";

onEachDatabase("a month as a document", (fresh) => {
  let desk: Desk;
  beforeAll(async () => {
    desk = await openDesk(await fresh());
    await desk.ask(describeWard, inputs.describeWard({ wardId: desk.hospital.wards.OBS } as Subjects));
  });
  afterAll(() => desk?.close());

  const textOf = (cover: readonly { label: string; text: string }[], label: string) =>
    cover.find((line) => line.label === label)?.text;
  const admit = (identifier: string) =>
    desk.ask(
      endpoints.admitPatient,
      { wardId: desk.hospital.wards["3E"], identifier, number: identifier, admittedAt: "2026-10-30T08:00" },
      { acknowledge: true },
    );

  it("has the same figures in every file, unrounded, and says why one is missing", async () => {
    const { document } = await desk.ask(readMonthDocument, { month: month.parse("2026-11") });
    const [summary, figures] = document.sheets;
    const cell = (key: string) => summary?.rows[0]?.[summary.columns.findIndex((column) => column.key === key)] ?? null;
    // 22 and 3 by hand (tests/http/alder-bay.ts).
    expect([cell("patient_days"), cell("catheter_days"), cell("utilization"), cell("rate")]).toEqual([
      22,
      3,
      3 / 22,
      null,
    ]);
    expect(cell("missing")).toContain("CAUTIs: Not watched for infections");
    expect(figures?.rows.length).toBeGreaterThan(20);
    const options = { base: desk.base, headers: { "x-demo-person": String(desk.hospital.people.prevention) } };
    const asked = { month: month.parse("2026-11") };
    const csv = await (await callForFile(readMonthDocument, asked, { ...options, type: "text/csv" })).text();
    const [line] = parse(csv, { columns: true }) as Record<string, string>[];
    expect([line?.utilization, line?.rate]).toEqual([String(3 / 22), ""]);
    const book = await (await callForFile(readMonthDocument, asked, { ...options, type: xlsx })).arrayBuffer();
    const sheets = await readExcelFile(Readable.from(Buffer.from(book)));
    expect(sheets[1]?.data[1]?.slice(0, 5)).toEqual(summary?.rows[0]?.slice(0, 5));
    expect(document.charts.map(({ input }) => input.id)).toEqual(["utilization-1"]);
  });

  it("is made of what was signed, whatever is recorded later, and its cover says who signed", async () => {
    await admit("BEFORE");
    const { seen } = await desk.ask(readMonthFigures, { month: october });
    await desk.ask(signMonth, { month: october, seen, replaces: 0, reason: null });
    const signed = async () => (await desk.ask(readMonthDocument, { month: october, signature: 1 })).document;
    const before = await signed();
    await admit("AFTER");
    expect(await signed()).toEqual(before);
    const now = (await desk.ask(readMonthDocument, { month: october })).document;
    expect([before, now].map(({ sheets }) => sheets[0]?.total?.[2])).toEqual([1, 2]);
    expect(textOf(before.cover, "Signed")).toMatch(
      /^2026-11-20T15:00:00\.000Z \(UTC\) by Ash Moreno, Infection prevention\. SHA-256 of the signed text: [0-9a-f]{64}$/,
    );
    expect(textOf(now.cover, "Signed")).toMatch(/^These figures are not signed/);
    expect(
      ["Facility", "Period", "Data as of", "Baseline of infections", "Limits"].every((one) => textOf(now.cover, one)),
    ).toBe(true);
    const absent = await desk.refused(readMonthDocument, { month: october, signature: 2 });
    expect(absent.errors.map(({ code }) => code)).toEqual(["not-found"]);
  });
});
