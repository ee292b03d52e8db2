import type { SvgNode } from "./svg-node.ts";

/** A drawing as text for files and pages, with everything escaped that would be markup. */
export function svgText(node: SvgNode): string {
  const attributes = Object.entries(node.attributes).map(([name, value]) => ` ${name}="${escaped(value)}"`);
  const children = node.children.map((child) => (typeof child === "string" ? escaped(child) : svgText(child)));
  const inner = children.join("");
  return `<${node.tag}${attributes.join("")}${inner === "" ? "/>" : `>${inner}</${node.tag}>`}`;
}

const marks: Readonly<Record<string, string>> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" };

function escaped(text: string): string {
  return text.replace(/[&<>"]/g, (mark) => marks[mark] ?? mark);
}
