/** An element of a drawing as plain data: the server writes it as text, the browser makes elements of it. */
export interface SvgNode {
  readonly tag: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly (SvgNode | string)[];
}

/**
 * An element; numbers are written with at most two decimals, so that a drawing is the same everywhere, and attributes
 * without a value are left out.
 */
export function svgNode(
  tag: string,
  attributes: Readonly<Record<string, string | number | undefined>>,
  ...children: (SvgNode | string)[]
): SvgNode {
  const written: Record<string, string> = {};
  for (const [name, value] of Object.entries(attributes)) {
    if (value !== undefined) written[name] = typeof value === "number" ? place(value) : value;
  }
  return { tag, attributes: written, children };
}

/** A coordinate in the form in which drawings hold it. Throws a plain Error for what is no finite number. */
export function place(value: number): string {
  if (!Number.isFinite(value)) throw new Error(`a drawing has no place ${value}`);
  return String(Math.round(value * 100) / 100 + 0);
}
