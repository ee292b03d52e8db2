import type PDFDocument from "pdfkit";
import type { SvgNode } from "../charts/svg-node.ts";

type Pdf = InstanceType<typeof PDFDocument>;

/** Draws a chart at a place of the page, as one figure with words for who does not see it; returns its height. */
export function drawInPdf(pdf: Pdf, svg: SvgNode, { x, y, alt }: { x: number; y: number; alt: string }): number {
  const [width, height] = [Number(svg.attributes.width), Number(svg.attributes.height)];
  const room = Math.min((pdf.page.width - 2 * x) / width, (pdf.page.height - y - 110) / height);
  pdf.addStructure(
    pdf.struct("Figure", { alt }, () => {
      pdf.save();
      pdf.translate(x, y).scale(room);
      for (const child of svg.children) drawNode(pdf, child);
      pdf.restore();
    }),
  );
  return height * room;
}

function drawNode(pdf: Pdf, node: SvgNode | string): void {
  if (typeof node === "string" || node.tag === "title" || node.tag === "desc") return;
  if (node.tag === "text") drawWords(pdf, node);
  else if (node.tag === "rect") drawGround(pdf, node.attributes);
  else if (node.tag === "path") drawPath(pdf, node.attributes);
  else drawGroup(pdf, node);
}

function drawGround(pdf: Pdf, { width, height, fill = "white" }: SvgNode["attributes"]): void {
  pdf.rect(0, 0, Number(width), Number(height)).fill(fill);
}

function drawGroup(pdf: Pdf, { attributes, children }: SvgNode): void {
  pdf.save();
  const moved = /translate\(([-\d.]+) ([-\d.]+)\)/.exec(attributes.transform ?? "");
  if (moved) pdf.translate(Number(moved[1]), Number(moved[2]));
  for (const child of children) drawNode(pdf, child);
  pdf.restore();
}

function drawPath(pdf: Pdf, attributes: SvgNode["attributes"]): void {
  const { d = "", fill, stroke } = attributes;
  pdf.save();
  pdf.path(d).lineWidth(Number(attributes["stroke-width"] ?? 1));
  const dash = attributes["stroke-dasharray"];
  const lengths = dash?.split(" ").map(Number) ?? [];
  if (lengths.length > 0) pdf.dash(lengths as unknown as number, {});
  const isFilled = fill !== undefined && fill !== "none";
  if (isFilled && stroke !== undefined) pdf.fillAndStroke(fill, stroke);
  else if (isFilled) pdf.fill(fill);
  else if (stroke !== undefined) pdf.stroke(stroke);
  pdf.restore();
}

function drawWords(pdf: Pdf, { attributes, children }: SvgNode): void {
  const text = children.filter((child) => typeof child === "string").join("");
  pdf.font(attributes["font-weight"] === "600" ? "Helvetica-Bold" : "Helvetica").fontSize(13);
  const width = pdf.widthOfString(text);
  const before = { start: 0, middle: width / 2, end: width }[attributes["text-anchor"] ?? "start"] ?? 0;
  pdf.fillColor(attributes.fill ?? "black");
  // A drawing gives the line on which words stand, the page the top of the letters.
  pdf.text(text, Number(attributes.x) - before, Number(attributes.y), { lineBreak: false, baseline: "alphabetic" });
}
