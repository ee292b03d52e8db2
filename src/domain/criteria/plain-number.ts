/** A number written as a mantissa and what it is multiplied with. */
export interface Scaled {
  readonly mantissa: number;
  readonly factor: number;
}

const decimal = "\\d{1,3}(?:[.,]\\d{1,2})?";
/** `10^5`, `10**5`, `10e5`, `10 exp 5`, `10(5)`, `10 to the 5th`: ten with its power. */
const ten =
  "10\\s*(?:\\^|\\*\\*|e|exp\\.?|to the(?: power(?: of)?)?)\\s*\\(?\\+?0?(\\d{1,2})\\)?(?:th|rd|nd|st)?(?: power)?|10\\((\\d{1,2})\\)";
const powers = new RegExp(`^(?:(${decimal})\\s*[x*]\\s*)?(?:${ten})$`);
const thousands = new RegExp(`^(${decimal})\\s*(?:[x*]\\s*(?:1,?000)|k|thousand)$`);
const millions = new RegExp(`^(${decimal})\\s*(?:[x*]\\s*(?:1,?000,?000)|million)$`);
/** Scientific notation has one digit before the point: `15E4` and `10E5` are not it. */
const scientific = /^([1-9](?:\.\d{1,2})?)e\+?0?(\d{1,2})$/;
const logarithm = /^(?:log\s*(?:10)?\s*(\d{1,2}(?:\.\d{1,2})?)|(\d{1,2}(?:\.\d{1,2})?)\s*log\s*(?:10)?)$/;

/** A number with a power or a word for its size; null where it has none. */
export function readScaled(text: string): Scaled | null {
  const power = powers.exec(text);
  if (power) return scaled(power[1] ?? "1", 10 ** Number(power[2] ?? power[3]));
  const thousand = thousands.exec(text);
  if (thousand) return scaled(thousand[1] ?? "", 1000);
  const million = millions.exec(text);
  if (million) return scaled(million[1] ?? "", 1_000_000);
  const written = scientific.exec(text);
  return written ? scaled(written[1] ?? "", 10 ** Number(written[2])) : null;
}

/**
 * A plain count with `10E4` written as scientific notation means it, ten times ten to the fourth; null where a count has
 * no such number.
 */
export function asScientific(text: string): string | null {
  const read = text.replace(
    /(?<![\d.,])10\s*e\s*\(?\+?0?(\d{1,2})\)?/g,
    (_, power: string) => `10^${Number(power) + 1}`,
  );
  return read === text ? null : read;
}

/** A comma before one or two digits is a decimal comma: thousands have three. */
function scaled(mantissa: string, factor: number): Scaled {
  return { mantissa: Number(mantissa.replace(",", ".")), factor };
}

/**
 * The number of a text that is nothing else, in the spellings of `plainCount`; null where it is not certain. Grouped
 * thousands have a comma, a blank or an apostrophe: `100.000` may be a hundred.
 */
export function readNumber(text: string): number | null {
  const whole = text.replace(/(?<=\d{4}|,\d{3})\.0{1,2}$/, "");
  if (/^\d+$/.test(whole)) return Number(whole);
  if (/^\d{1,3}(,\d{3})+$|^\d{1,3}( \d{3})+$|^\d{1,3}(['’]\d{3})+$|^\d{1,3}(\.\d{3}){2,}$/.test(whole)) {
    return Number(whole.replace(/[, '’.]/g, ""));
  }
  const [, log = "", otherLog = log] = logarithm.exec(text) ?? [];
  if (otherLog !== "") return Math.round(10 ** Number(otherLog));
  const number = readScaled(text);
  // Multiplied as hundredths, so that 1.5 x 10^5 is exact.
  return number === null ? null : (Math.round(number.mantissa * 100) * number.factor) / 100;
}
