import type { SheetCell, SheetColumn } from "../../shared/sheet.ts";

/** Decimals of each kind of figure on paper; files hold them unrounded. */
const decimals: Readonly<Record<Exclude<SheetColumn["kind"], "text" | "day">, readonly [least: number, most: number]>> =
  {
    whole: [0, 0],
    ratio: [3, 3],
    rate: [2, 2],
    amount: [0, 3],
  };

/** A cell as it is printed; null is missing, and is never printed as zero or left empty. */
export function cellText(cell: SheetCell, kind: SheetColumn["kind"]): string {
  if (cell === null) return kind === "text" || kind === "day" ? "" : "missing";
  if (typeof cell === "string") return cell;
  if (kind === "text" || kind === "day") return String(cell);
  const [least, most] = decimals[kind];
  // What is not zero is never printed as zero: a p value may be that small.
  const smallest = 10 ** -most;
  if (cell > 0 && cell < smallest / 2) return `< ${smallest}`;
  return cell.toLocaleString("en-US", { minimumFractionDigits: least, maximumFractionDigits: most });
}

/** Whether cells of this kind are figures, which stand at the right. */
export function isFigure(kind: SheetColumn["kind"]): boolean {
  return kind !== "text" && kind !== "day";
}
