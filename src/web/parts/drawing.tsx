import { createElement, type KeyboardEvent, type ReactNode, useState } from "react";
import type { SvgNode } from "../../charts/svg-node.ts";

/** Arrow keys and where they lead among the points. */
const steps: Readonly<Record<string, number>> = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 };

/**
 * A drawing of the charts as elements of the page. One point at a time can be reached with Tab, the arrow keys go on to
 * the others; `onPoint` is told the text of the point that has the focus or lies under the pointer, null for none.
 */
export function Drawing({ svg, onPoint }: { svg: SvgNode; onPoint: (text: string | null) => void }): ReactNode {
  const [current, setCurrent] = useState(0);
  const move = (event: KeyboardEvent<Element>): void => {
    const points = [...event.currentTarget.querySelectorAll<SVGElement>(".chart-point")];
    const at = points.findIndex((point) => point.matches(":focus"));
    const step = steps[event.key];
    if (at === -1 || step === undefined) return;
    event.preventDefault();
    points[(at + step + points.length) % points.length]?.focus();
  };
  let points = 0;
  const draw = (node: SvgNode | string, key: number): ReactNode => {
    if (typeof node === "string") return node;
    const isPoint = node.attributes.class === "chart-point";
    const own = isPoint ? pointProps(points++) : {};
    return createElement(
      node.tag,
      { ...propsOf(node.attributes), ...own, key },
      ...node.children.map((child, at) => draw(child, at)),
    );
  };
  const pointProps = (at: number) => ({
    tabIndex: at === current ? 0 : -1,
    onFocus: (event: { currentTarget: Element }) => {
      setCurrent(at);
      onPoint(event.currentTarget.getAttribute("aria-label"));
    },
    onBlur: () => onPoint(null),
    onMouseEnter: (event: { currentTarget: Element }) => onPoint(event.currentTarget.getAttribute("aria-label")),
    onMouseLeave: () => onPoint(null),
  });
  const drawn = { ...propsOf(svg.attributes), onKeyDown: move };
  return createElement("svg", drawn, ...svg.children.map((child, at) => draw(child, at)));
}

/** Attributes under the names that React has for them. */
function propsOf(attributes: SvgNode["attributes"]): Record<string, string> {
  return Object.fromEntries(Object.entries(attributes).map(([name, value]) => [propName(name), value]));
}

function propName(name: string): string {
  if (name === "class") return "className";
  if (name === "tabindex") return "tabIndex";
  return name.startsWith("aria-") ? name : name.replaceAll(/-(\w)/g, (_, letter: string) => letter.toUpperCase());
}
