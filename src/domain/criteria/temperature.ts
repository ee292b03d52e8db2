import { boundsAtAnyAge } from "../../../shared/bounds/quantities.ts";
import type { TemperatureUnit } from "../../../shared/culture-words.ts";

/**
 * A temperature in whole hundredths of a degree of the unit in which it was measured. It is never converted: a
 * conversion would round 100.5 °F, and with it the answer at a limit.
 */
export interface Temperature {
  readonly hundredths: number;
  readonly unit: TemperatureUnit;
}

/** What a living body can have, in °C. */
const { low: coldest, high: hottest } = boundsAtAnyAge.temperatureCelsius.possible;

const form = /^([+-]?\d{1,3})(?:[.,](\d{1,2}))?\s*(?:°\s*)?([CF])?$/i;

/**
 * Reads `38.4`, `38,4 °C` or `101.1 F`; without a unit it is °C, as the file layout says. null for what has another
 * form, such as a third decimal or a range.
 */
export function readTemperature(text: string): Temperature | null {
  const parts = form.exec(text.trim());
  if (parts === null) return null;
  const [, degrees = "", decimals = "", unit = "C"] = parts;
  const sign = degrees.startsWith("-") ? -1 : 1;
  const hundredths = Math.abs(Number(degrees)) * 100 + Number(decimals.padEnd(2, "0"));
  return { hundredths: sign * hundredths, unit: unit.toUpperCase() === "F" ? "F" : "C" };
}

/** Less than zero when it is colder than a limit in hundredths of °C, zero when equal, more when hotter. Exact. */
export function comparedTo({ hundredths, unit }: Temperature, limitCelsius: number): number {
  // 9 C = 5 (F - 32), in whole numbers.
  return unit === "C" ? hundredths - limitCelsius : (hundredths - 3_200) * 5 - limitCelsius * 9;
}

/** Whether a living body can have it; what cannot be is mostly a value in the other unit. */
export function isHuman(temperature: Temperature): boolean {
  return comparedTo(temperature, coldest * 100) >= 0 && comparedTo(temperature, hottest * 100) <= 0;
}

/** `38.4 °C`, as it was measured. */
export function temperatureText({ hundredths, unit }: Temperature): string {
  const text = (hundredths / 100).toFixed(2).replace(/0$/, "");
  return `${text} °${unit}`;
}
