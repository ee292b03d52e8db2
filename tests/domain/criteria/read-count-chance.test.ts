import fc from "fast-check";
import { expect, it } from "vitest";
import { type ReadCount, readCount } from "../../../src/domain/criteria/index.ts";

/** From what to what a reading goes; null: nothing is said. */
function extent(count: ReadCount): readonly [low: number, high: number] | null {
  switch (count.kind) {
    case "number":
      return [count.cfuPerMl, count.cfuPerMl];
    case "bound":
      return count.relation.startsWith(">") ? [count.cfuPerMl, Number.POSITIVE_INFINITY] : [0, count.cfuPerMl];
    case "range":
      return [count.lowCfuPerMl, count.highCfuPerMl];
    default:
      return null;
  }
}

const grouped = (value: number) => value.toLocaleString("en-US");
const raised = (power: number) => [...`${power}`].map((digit) => "⁰¹²³⁴⁵⁶⁷⁸⁹"[Number(digit)]).join("");
const units = ["", " CFU/mL", " cfu/ml", " col/mL", " org/mL", " organisms/ml", " colonies per milliliter", " /mL"];

/** How a power is written: with E only where ten times as much is on the same side of a limit. */
const powerSign = (power: number) => ([1, 4, 7].includes(power) ? "^" : "E");

/** With E, ten times as much may be meant; "less than" a limit it is on the other side, so that the wider reading holds. */
const isTenTimes = (text: string) => text.includes("10E");
const isWider = (text: string, value: number, below: string) =>
  isTenTimes(text) && [100, 100_000].includes(value) && ["<", "less than "].includes(below);

/** A number and a way in which a laboratory writes it. */
const written = fc.oneof(
  fc
    .integer({ min: 0, max: 999_999_999 })
    .chain((value) =>
      fc.constantFrom(`${value}`, grouped(value), grouped(value).replaceAll(",", " ")).map((text) => ({ value, text })),
    ),
  fc.integer({ min: 1, max: 999 }).chain((value) =>
    fc.constantFrom(`${value}k`, `${value} K`, `${value} thousand`, `${value} x 1000`, `${value}x10^3`).map((text) => ({
      value: value * 1000,
      text,
    })),
  ),
  fc
    .record({ power: fc.integer({ min: 1, max: 9 }), mantissa: fc.integer({ min: 1, max: 9 }) })
    .chain(({ power, mantissa }) =>
      fc
        .constantFrom(
          ...[
            `${mantissa} x 10^${power}`,
            `${mantissa}x10${powerSign(power)}${power}`,
            `${mantissa}×10${raised(power)}`,
          ],
          ...[`${mantissa}E${power}`, `${mantissa}e+0${power}`, `${mantissa}.0 x 10**${power}`],
        )
        .map((text) => ({ value: mantissa * 10 ** power, text })),
    ),
  fc.integer({ min: 1, max: 9 }).chain((power) =>
    fc
      .constantFrom(`10^${power}`, `10${powerSign(power)}${power}`, `10${raised(power)}`, `10 to the ${power}th`)
      .map((text) => ({
        value: 10 ** power,
        text,
      })),
  ),
);

it("a number is read as what was written, in each spelling and unit", () => {
  fc.assert(
    fc.property(written, fc.constantFrom(...units), ({ value, text }, unit) => {
      expect(extent(readCount(`${text}${unit}`))).toEqual([value, value]);
    }),
  );
});

it("per liter is a thousandth of per milliliter", () => {
  fc.assert(
    fc.property(written, fc.constantFrom(" CFU/L", "/L", " cfu per liter"), ({ value, text }, unit) => {
      expect(extent(readCount(`${text}${unit}`))).toEqual([value / 1000, value / 1000]);
    }),
  );
});

it("a bound has its number on the side that was written", () => {
  const least = fc.constantFrom(
    ...[">", ">=", "≥ ", "at least ", "more than ", "greater than or equal to ", "> or = "],
  );
  const upTo = fc.constantFrom(...["<", "<= ", "≤", "less than ", "up to ", "no more than "]);
  fc.assert(
    fc.property(written, least, upTo, fc.constantFrom(...units), ({ value, text }, above, below, unit) => {
      expect(extent(readCount(`${above}${text}${unit}`))).toEqual([value, Number.POSITIVE_INFINITY]);
      expect(extent(readCount(`${below}${text}${unit}`))).toEqual([
        0,
        isWider(text, value, below) ? 10 * value : value,
      ]);
    }),
  );
});

it("a range holds every reading that makes sense, or is not read: never less than its first number as it stands", () => {
  const join = fc.constantFrom("-", " - ", "–", " to ");
  fc.assert(
    fc.property(written, written, join, fc.constantFrom(...units), (a, b, between, unit) => {
      const found = extent(readCount(`${a.text}${between}${b.text}${unit}`));
      if (found === null) return;
      const [low, high] = found;
      expect(isTenTimes(b.text) ? [b.value, 10 * b.value] : [b.value]).toContain(high);
      // As it stands, or with the thousands or the power that are written once.
      const shortened = /^\d{1,3}$/.test(a.text) && low > a.value && low < high && low % a.value === 0;
      expect(low === a.value || shortened).toBe(true);
      // Where both readings make sense the wider one holds, or nothing does.
      if (low === a.value && /^\d{2,3}$/.test(a.text)) expect(low * 1000).toBeGreaterThanOrEqual(high);
    }),
  );
});

it("whatever is written, digits that are read were written", () => {
  const text = fc.string({ unit: fc.constantFrom(..."0123456789,. -^ekxEX<>=+'/mlCFU"), maxLength: 14 });
  fc.assert(
    fc.property(text, (any) => {
      const found = extent(readCount(any));
      const digits = (value: number) => `${value}`.replace(/e\+?\d+$|\.|0+$/g, "").replace(/^0+/, "");
      for (const end of found ?? []) {
        if (Number.isFinite(end) && !/<[^<]*$/.test(any)) expect(any.replace(/[^\d]/g, "")).toContain(digits(end));
      }
    }),
    { numRuns: 2000 },
  );
});
