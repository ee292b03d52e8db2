import { Readable } from "node:stream";
import { getDocument } from "pdfjs-dist/legacy/build/pdf.mjs";
import readExcelFile from "read-excel-file/node";
import { describe, expect, it } from "vitest";
import { type ReportDocument, reportDocument } from "../../shared/report-document.ts";
import { cellText } from "../../src/documents/cell-text.ts";
import { documentMaker } from "../../src/documents/document-maker.ts";

const xlsx = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";
const columns = [
  { key: "ward", label: "Ward", kind: "text", unit: null },
  { key: "day", label: "Day", kind: "day", unit: null },
  { key: "patient_days", label: "Patient-days", kind: "whole", unit: "patient-days" },
  { key: "utilization", label: "Device utilization ratio", kind: "ratio", unit: "catheter-days per patient-day" },
  { key: "note", label: "Note", kind: "text", unit: null },
] as const;
const sheetOf = (title: string) => ({
  ...{ id: title, title, period: "2026-11-01 to 2026-11-30", asOf: "2026-12-01T00:00:00.000Z" },
  ...{ sources: ["A source"], cautions: [], columns: [...columns] },
  rows: [
    ["3E <new>", "2026-11-04", 12_345, 1 / 3, "=1+1"],
    ["4N", "2026-11-05", null, null, "nobody counted"],
  ],
  total: ["All wards", null, 12_345, 1 / 3, ""],
});

/** A document of Alder Bay Hospital with everything that a document can hold. */
const given: ReportDocument = reportDocument.parse({
  title: "Alder Bay Hospital: urinary catheters and infections, 2026-11",
  cover: [{ label: "Period", text: "2026-11-01 to 2026-11-30" }],
  sheets: [sheetOf("Summary by ward"), sheetOf("Summary: by ward?")],
  charts: [
    {
      kind: "trend",
      input: {
        ...{ id: "t", title: "Utilization", sentence: "Shows use; it does not show need.", unit: "ratio", decimals: 2 },
        ...{ periods: ["2026-10", "2026-11"], periodsAre: "month", series: [{ name: "3E", values: [0.25, 0.5] }] },
      },
      notes: ["A note below the chart."],
    },
    { kind: "absent", input: { id: "a", title: "Funnel", sentence: "No CAUTI was counted." }, notes: [] },
  ],
  cautions: ["Small wards have wide limits."],
  sources: ["CDC Patient Safety Component Manual, chapter 7"],
});

const maker = (browserPath: string | null) => documentMaker({ version: "1.2.3", browserPath });
/** What must stand in every document: words, and figures as they are printed. */
const printed = [
  given.title,
  "2026-11-01 to 2026-11-30",
  "Dwell Ledger 1.2.3",
  ...["Small wards have wide limits.", "CDC Patient Safety Component Manual, chapter 7"],
  ...["3E <new>", "2026-11-04", "12,345", "0.333", "=1+1", "missing", "nobody counted"],
  ...["Shows use; it does not show need.", "A note below the chart.", "No CAUTI was counted."],
];

async function textOf(bytes: Uint8Array) {
  const pdf = await getDocument({ data: bytes, verbosity: 0 }).promise;
  const pages = await Promise.all(
    Array.from({ length: pdf.numPages }, async (_, at) => {
      const page = await pdf.getPage(at + 1);
      const { items } = await page.getTextContent();
      return { text: items.map((item) => ("str" in item ? item.str : "")).join(" "), tree: await page.getStructTree() };
    }),
  );
  const text = pages
    .map((page) => page.text)
    .join(" ")
    .replaceAll(/\s+/g, " ");
  const { info } = (await pdf.getMetadata()) as { info: { Title?: string } };
  return {
    text,
    title: info.Title,
    tags: JSON.stringify(pages.map(({ tree }) => tree)),
    marked: await pdf.getMarkInfo(),
  };
}

describe("a workbook, read back by another library", () => {
  it("has typed cells with unrounded figures, words that are no formulas, nothing where something is missing, and its sources", async () => {
    const bytes = await maker(null).make(given, xlsx);
    const sheets = await readExcelFile(Readable.from(Buffer.from(bytes)));
    expect(sheets.map(({ sheet }) => sheet)).toEqual([
      ...["Cover", "Summary by ward", "Summary  by ward", "Cautions and sources"],
    ]);
    const [cover, table, , last] = sheets.map(({ data }) => data);
    expect(cover?.flat().filter((cell) => cell !== null)).toEqual([
      ...[given.title, "Period", "2026-11-01 to 2026-11-30", "Made by", "Dwell Ledger 1.2.3"],
    ]);
    expect(table).toEqual([
      [
        "Ward",
        "Day",
        "Patient-days (patient-days)",
        "Device utilization ratio (catheter-days per patient-day)",
        "Note",
      ],
      ["3E <new>", new Date("2026-11-04"), 12_345, 1 / 3, "=1+1"],
      ["4N", new Date("2026-11-05"), null, null, "nobody counted"],
      ["All wards", null, 12_345, 1 / 3, null],
    ]);
    expect(last?.flat()).toContain("CDC Patient Safety Component Manual, chapter 7");
  });
});

describe.each([
  ["a real browser", process.env.CHROMIUM_PATH ?? "/usr/bin/chromium"],
  ["no browser", "/nowhere/chromium"],
])("a PDF by %s, read back by another library", (_, browserPath) => {
  it("holds every word and figure, and marks headings, tables and pictures for screen readers", async () => {
    const { text, title, tags, marked } = await textOf(await maker(browserPath).make(given, "application/pdf"));
    for (const words of printed) expect(text).toContain(words);
    expect(text.match(/12,345/g)).toHaveLength(4);
    expect(title).toBe(given.title);
    expect(marked).toMatchObject({ Marked: true });
    for (const tag of ["H1", "H2", "P", "Table", "TR", "TH", "TD", "Figure"]) expect(tags).toContain(`"role":"${tag}"`);
    expect(tags).toContain('"alt":"Utilization. Shows use; it does not show need."');
  }, 60_000);
});

it("figures are printed by their kind, and what is missing is no zero and no empty cell", () => {
  const kinds = ["whole", "ratio", "rate", "amount"] as const;
  expect(kinds.map((kind) => cellText(1234.56789, kind))).toEqual(["1,235", "1,234.568", "1,234.57", "1,234.568"]);
  expect(kinds.map((kind) => cellText(null, kind))).toEqual(kinds.map(() => "missing"));
  // A p value is never zero, however small.
  expect([2e-7, 0.0004, 0.0006, 0].map((p) => cellText(p, "amount"))).toEqual(["< 0.001", "< 0.001", "0.001", "0"]);
  expect([cellText(null, "text"), cellText(7, "text"), cellText("2026-11-04", "day")]).toEqual(["", "7", "2026-11-04"]);
});
