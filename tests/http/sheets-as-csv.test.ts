import { parse } from "csv-parse/sync";
import { afterAll, beforeAll, expect, it } from "vitest";
import { endpoints } from "../../shared/api/index.ts";
import { callForCsv } from "../../shared/call.ts";
import { month } from "../../shared/day.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { type Desk, openDesk } from "./desk.ts";

const november = month.parse("2026-11");

onEachDatabase("a sheet as CSV", (fresh) => {
  let desk: Desk;
  beforeAll(async () => {
    desk = await openDesk(await fresh());
  });
  afterAll(() => desk?.close());

  const from = (person: "prevention" | "bedside") => ({
    base: desk.base,
    headers: { "x-demo-person": String(desk.hospital.people[person]) },
  });

  it("has the very rows that the same address answers as JSON, for the months, ward days and care", async () => {
    const wardId = desk.hospital.wards["3E"];
    const asked = [
      [endpoints.readMonth, { month: november }],
      [endpoints.readMonthCare, { month: november }],
      [endpoints.readWardMonth, { wardId, month: november }],
    ] as const;
    for (const [endpoint, input] of asked) {
      const { sheet } = await desk.ask(endpoint, input as never);
      const rows = parse(await callForCsv(endpoint, input as never, from("prevention")));
      const texts = sheet.rows.map((row) => row.map((cell) => (cell === null ? "" : String(cell))));
      expect(rows).toEqual([sheet.columns.map(({ key }) => key), ...texts]);
      expect(texts.length).toBeGreaterThan(1);
    }
  });

  it("is sent as CSV, for nobody to take for JSON, and holds the wards of the person alone", async () => {
    const path = `${desk.base}/api/v1/months/2026-11`;
    const headers = { ...from("bedside").headers, accept: "text/csv" };
    const answer = await fetch(path, { headers });
    expect([answer.headers.get("content-type"), answer.headers.get("vary")]).toEqual([
      "text/csv; charset=utf-8",
      "accept",
    ]);
    const rows = parse(await answer.text(), { columns: true }) as { ward: string }[];
    expect(rows.map(({ ward }) => ward)).toEqual(["3E"]);
  });

  it("is refused as any answer is: as a problem, with the code", async () => {
    const refused = callForCsv(endpoints.readMonth, { month: month.parse("2026-12") }, from("prevention"));
    await expect(refused).rejects.toMatchObject({ document: { status: 422, code: "in-the-future" } });
    const unknown = callForCsv(endpoints.readMe, {}, from("prevention"));
    await expect(unknown).rejects.toThrow("GET /me answered 200 in a form that is not known here");
  });
});
