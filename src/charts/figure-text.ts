import { notFinalWords } from "../../shared/figure-words.ts";

/** A figure for people: so many decimals, thousands apart by commas, as the United States write it. */
export function figureText(value: number, decimals: number): string {
  const [whole = "", part] = Math.abs(value).toFixed(decimals).split(".");
  const spaced = whole.replace(/\B(?=(\d{3})+$)/g, ",");
  const isZero = !/[1-9]/.test(`${whole}${part ?? ""}`);
  return `${value < 0 && !isZero ? "-" : ""}${spaced}${part === undefined ? "" : `.${part}`}`;
}

/** What follows a figure that cultures could still change; empty for a final one. */
export function notFinalText(open: number | undefined): string {
  return open === undefined || open === 0 ? "" : `, ${notFinalWords(open)}`;
}

/** A tick of an axis, with as many decimals as it has. */
export function tickText(value: number): string {
  const decimals = String(value).includes("e") ? 0 : (String(value).split(".")[1]?.length ?? 0);
  return figureText(value, decimals);
}
