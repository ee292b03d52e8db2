import type { ReportDocument } from "../../shared/report-document.ts";
import { markOf, type Sheet, type SheetCell } from "../../shared/sheet.ts";
import { drawChart } from "../charts/draw-chart.ts";
import { svgText } from "../charts/svg-text.ts";
import { cellText, isFigure } from "./cell-text.ts";
import { onPaper } from "./on-paper.ts";
import { printLook } from "./print-look.ts";

/** A document as one page of HTML made for paper: a cover, charts, tables with repeated heads, cautions and sources. */
export function documentHtml(document: ReportDocument): string {
  const { title, cover, charts, sheets, cautions, sources } = document;
  const said = cover.map(({ label, text }) => `<dt>${escaped(label)}</dt><dd>${escaped(text)}</dd>`).join("");
  const parts = [
    `<header><h1>${escaped(title)}</h1><dl>${said}</dl></header>`,
    list("Before you use these figures", cautions),
    ...charts.map(chartHtml),
    ...sheets.map(sheetHtml),
    list("Sources", sources),
  ];
  const head = `<meta charset="utf-8"><title>${escaped(title)}</title><style>${printLook}</style>`;
  return `<!doctype html><html lang="en-US"><head>${head}</head><body>${parts.join("")}</body></html>`;
}

function chartHtml(chart: ReportDocument["charts"][number]): string {
  const drawn = drawChart(chart);
  const { title, sentence } = chart.input;
  const notes = chart.notes.map((note) => `<li>${escaped(note)}</li>`).join("");
  // As an image the browser's PDF has it as one figure with words for who does not see it.
  const words = escaped(`${title}. ${sentence}`);
  const data = drawn === null ? "" : Buffer.from(svgText(drawn.svg)).toString("base64");
  const picture = drawn === null ? "" : `<img alt="${words}" src="data:image/svg+xml;base64,${data}">`;
  const said = `<p class="says">${escaped(sentence)}</p>${notes === "" ? "" : `<ul>${notes}</ul>`}`;
  return `<section class="chart"><h2>${escaped(title)}</h2>${picture}${said}</section>`;
}

function sheetHtml(whole: Sheet): string {
  const sheet = onPaper(whole);
  const { title, period, columns, rows, total } = sheet;
  const heads = columns
    .map(({ label, kind }) => `<th scope="col"${isFigure(kind) ? ' class="figure"' : ""}>${escaped(label)}</th>`)
    .join("");
  const line = (row: readonly SheetCell[], number: number | null) =>
    columns
      .map(({ key, kind }, at) => {
        const mark = markOf(sheet, number, key);
        const small = mark === undefined ? "" : ` <small>${escaped(mark)}</small>`;
        const text = `${escaped(cellText(row[at] ?? null, kind))}${small}`;
        if (at === 0) return `<th scope="row">${text}</th>`;
        return `<td${isFigure(kind) ? ' class="figure"' : ""}>${text}</td>`;
      })
      .join("");
  const body = rows.map((row, number) => `<tr>${line(row, number)}</tr>`).join("");
  const foot = total === null ? "" : `<tfoot><tr>${line(total, null)}</tr></tfoot>`;
  const caption = `<caption>${escaped(period)}</caption>`;
  return `<section><h2>${escaped(title)}</h2><table>${caption}<thead><tr>${heads}</tr></thead><tbody>${body}</tbody>${foot}</table></section>`;
}

function list(title: string, sentences: readonly string[]): string {
  if (sentences.length === 0) return "";
  const items = sentences.map((sentence) => `<li>${escaped(sentence)}</li>`).join("");
  return `<section><h2>${escaped(title)}</h2><ul>${items}</ul></section>`;
}

const marks: Readonly<Record<string, string>> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" };

function escaped(text: string): string {
  return text.replace(/[&<>"]/g, (mark) => marks[mark] ?? mark);
}
