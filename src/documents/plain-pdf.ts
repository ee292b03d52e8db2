import PDFDocument from "pdfkit";
import type { ReportDocument } from "../../shared/report-document.ts";
import { markOf, type Sheet } from "../../shared/sheet.ts";
import { drawChart } from "../charts/draw-chart.ts";
import { cellText, isFigure } from "./cell-text.ts";
import { onPaper } from "./on-paper.ts";
import { drawInPdf } from "./pdf-drawing.ts";

type Pdf = InstanceType<typeof PDFDocument>;

const margin = 40;
const fonts = { plain: "Helvetica", bold: "Helvetica-Bold" } as const;

/**
 * A document written without a browser: the same figures and charts in plainer looks, its headings, paragraphs and cells
 * marked for screen readers. Its built-in letters are those of western Europe; others are printed as a question mark.
 */
export async function plainPdf(document: ReportDocument): Promise<Uint8Array> {
  const pdf = new PDFDocument({
    ...{ size: "LETTER", layout: "landscape", margin, tagged: true, pdfVersion: "1.7", lang: "en-US" },
    ...{ displayTitle: true, info: { Title: printable(document.title) } },
  });
  const parts: Uint8Array[] = [];
  pdf.on("data", (part: Uint8Array) => parts.push(part));
  const ended = new Promise<void>((resolve, reject) => pdf.on("end", resolve).on("error", reject));
  say(pdf, "H1", document.title, { size: 24, bold: true });
  for (const { label, text } of document.cover) say(pdf, "P", `${label}: ${text}`, { size: 11 });
  saySentences(pdf, "Before you use these figures", document.cautions);
  for (const chart of document.charts) chartPart(pdf, chart);
  for (const sheet of document.sheets) tablePart(pdf, sheet);
  saySentences(pdf, "Sources", document.sources);
  pdf.end();
  await ended;
  return new Uint8Array(Buffer.concat(parts));
}

function say(pdf: Pdf, tag: string, text: string, { size = 10, bold = false } = {}): void {
  pdf.addStructure(
    pdf.struct(tag, {}, () => {
      pdf.font(bold ? fonts.bold : fonts.plain).fontSize(size);
      pdf.text(printable(text), margin, undefined, { width: pdf.page.width - 2 * margin });
      pdf.moveDown(0.4);
    }),
  );
}

function saySentences(pdf: Pdf, title: string, sentences: readonly string[]): void {
  if (sentences.length === 0) return;
  say(pdf, "H2", title, { size: 13, bold: true });
  for (const sentence of sentences) say(pdf, "P", sentence);
}

function chartPart(pdf: Pdf, chart: ReportDocument["charts"][number]): void {
  const drawn = drawChart(chart);
  pdf.addPage();
  say(pdf, "H2", chart.input.title, { size: 13, bold: true });
  if (drawn !== null) {
    const words = `${drawn.title}. ${drawn.sentence}`;
    const height = drawInPdf(pdf, drawn.svg, { x: margin, y: pdf.y, alt: printable(words) });
    pdf.y += height + 8;
  }
  say(pdf, "P", chart.input.sentence, { bold: true });
  for (const note of chart.notes) say(pdf, "P", note);
}

/** Columns as wide as their longest text asks for, shared out over the page. */
function tablePart(pdf: Pdf, whole: Sheet): void {
  const sheet = onPaper(whole);
  pdf.addPage();
  say(pdf, "H2", sheet.title, { size: 13, bold: true });
  const rows = [...sheet.rows, ...(sheet.total === null ? [] : [sheet.total])];
  const texts = rows.map((row, number) =>
    sheet.columns.map(({ key, kind }, at) => {
      const mark = markOf(sheet, number < sheet.rows.length ? number : null, key);
      return printable(`${cellText(row[at] ?? null, kind)}${mark === undefined ? "" : ` (${mark})`}`);
    }),
  );
  const heads = sheet.columns.map(({ label }) => printable(label));
  const wanted = heads.map((head, at) =>
    Math.min(34, Math.max(6, longestWord(head), ...texts.map((row) => Math.min(34, row[at]?.length ?? 0)))),
  );
  const all = wanted.reduce((sum, width) => sum + width, 0);
  const widths = wanted.map((width) => (width / all) * (pdf.page.width - 2 * margin));
  pdf.font(fonts.plain).fontSize(7.5);
  const cell = (text: string, at: number, type: "TH" | "TD") => ({
    ...{
      text,
      type,
      align: { x: isFigure(sheet.columns[at]?.kind ?? "text") ? ("right" as const) : ("left" as const) },
    },
  });
  // Makes its rows and cells part of the document's structure; the types of the library do not know it.
  const tagged = { structParent: pdf };
  const table = pdf.table({
    ...tagged,
    ...{ columnStyles: widths.map((width) => ({ width })), position: { x: margin, y: pdf.y } },
    ...{ defaultStyle: { padding: 2, border: [0, 0, 0.4, 0], borderColor: "#999999" } },
  });
  table.row(heads.map((head, at) => cell(head, at, "TH")));
  for (const row of texts) table.row(row.map((text, at) => cell(text, at, at === 0 ? "TH" : "TD")));
  table.end();
}

function longestWord(text: string): number {
  return Math.max(...text.split(" ").map((word) => word.length));
}

/** The letters that the built-in fonts have. */
function printable(text: string): string {
  return text
    .normalize("NFC")
    .replaceAll(/[^\u0020-\u007e\u00a0-\u00ff\u2013\u2014\u2018\u2019\u201c\u201d\u2022\u2026]/gu, "?");
}
