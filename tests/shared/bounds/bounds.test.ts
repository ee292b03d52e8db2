import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { boundFaults, type Charted } from "../../../shared/bounds/bounds.ts";
import { boundsAtAnyAge, boundsByAge, boundsOf, type Quantity } from "../../../shared/bounds/quantities.ts";

const pointer = "/value";
const year = 365;
const adult = { ageDays: 40 * year, confirmed: [] };

/** The code that one value is answered with; "" when it passes. */
function codeOf(quantity: Quantity, value: number | null | undefined, context: object = {}): string {
  const faults = boundFaults([{ quantity, value, pointer }], { ...adult, ...context });
  expect(faults.length).toBeLessThanOrEqual(1);
  return faults[0]?.code ?? "";
}

const quantities = [...Object.keys(boundsAtAnyAge), ...Object.keys(boundsByAge)] as Quantity[];

describe("a value", () => {
  // Sizes: nursing handbooks, adults 12-16, up to 24 with clots; children 6-10. Balloons: adults 5-10, 30 special,
  // children 3-5 (from memory). All others: common practice.
  it.each<[Quantity, number, number, string]>([
    ["sizeFr", 40 * year, 12, ""],
    ["sizeFr", 40 * year, 16, ""],
    ["sizeFr", 40 * year, 11.9, "unusual-value"],
    ["sizeFr", 40 * year, 24, "unusual-value"],
    ["sizeFr", 40 * year, 30, "unusual-value"],
    ["sizeFr", 40 * year, 31, "out-of-bounds"],
    ["sizeFr", 40 * year, 2, "out-of-bounds"],
    ["sizeFr", 40 * year, -14, "out-of-bounds"],
    ["sizeFr", 12 * year, 14, ""],
    ["sizeFr", 12 * year - 1, 14, "unusual-value"],
    ["sizeFr", 12 * year - 1, 6, ""],
    ["sizeFr", 12 * year - 1, 10, ""],
    ["sizeFr", year, 10, ""],
    ["sizeFr", year - 1, 10, "unusual-value"],
    ["sizeFr", 0, 5, ""],
    ["sizeFr", 0, 16, "out-of-bounds"],
    ["balloonMl", 40 * year, 5, ""],
    ["balloonMl", 40 * year, 10, ""],
    ["balloonMl", 40 * year, 30, "unusual-value"],
    ["balloonMl", 40 * year, 101, "out-of-bounds"],
    ["balloonMl", 40 * year, 0, "out-of-bounds"],
    ["balloonMl", 6 * year, 3, ""],
    ["balloonMl", 6 * year, 10, "unusual-value"],
    ["balloonMl", 30, 1.5, ""],
    ["balloonMl", 30, 5, "unusual-value"],
    ["balloonMl", 30, 30, "out-of-bounds"],
    ["attempts", 40 * year, 1, ""],
    ["attempts", 40 * year, 2, ""],
    ["attempts", 40 * year, 3, "unusual-value"],
    ["attempts", 40 * year, 0, "out-of-bounds"],
    ["attempts", 40 * year, 21, "out-of-bounds"],
    ["urineReturnedMl", 40 * year, 0, ""],
    ["urineReturnedMl", 40 * year, 1000, ""],
    ["urineReturnedMl", 40 * year, 1001, "unusual-value"],
    ["urineReturnedMl", 40 * year, -1, "out-of-bounds"],
    ["urineReturnedMl", 40 * year, 6001, "out-of-bounds"],
    ["urineOutputMl", 40 * year, 2000, ""],
    ["urineOutputMl", 40 * year, 2001, "unusual-value"],
    ["urineOutputMl", 40 * year, 10_001, "out-of-bounds"],
    ["balloonWithdrawnMl", 40 * year, 0, "unusual-value"],
    ["balloonWithdrawnMl", 40 * year, 10, ""],
    ["balloonWithdrawnMl", 40 * year, 31, "unusual-value"],
    ["balloonWithdrawnMl", 40 * year, 101, "out-of-bounds"],
    ["dwellDaysAtArrival", 40 * year, 84, ""],
    ["dwellDaysAtArrival", 40 * year, 85, "unusual-value"],
    ["dwellDaysAtArrival", 40 * year, 3651, "out-of-bounds"],
    ["sizeFr", 40 * year, Number.NaN, "out-of-bounds"],
  ])("of %s at an age of %d days: %d is %s", (quantity, ageDays, value, code) => {
    expect(codeOf(quantity, value, { ageDays })).toBe(code);
  });

  it("is usual at an unknown age when it is usual at any age", () => {
    const unknown = { ageDays: null };
    expect([5, 8, 10, 16].map((size) => codeOf("sizeFr", size, unknown))).toEqual(["", "", "", ""]);
    expect([4, 17, 31].map((size) => codeOf("sizeFr", size, unknown))).toEqual([
      "unusual-value",
      "unusual-value",
      "out-of-bounds",
    ]);
    expect([1, 10, 0.5, 101].map((ml) => codeOf("balloonMl", ml, unknown))).toEqual([
      "",
      "",
      "unusual-value",
      "out-of-bounds",
    ]);
  });

  it.each([
    { balloonMl: 10, drawn: 5, code: "" },
    { balloonMl: 10, drawn: 11, code: "" },
    { balloonMl: 10, drawn: 4.9, code: "unusual-value" },
    { balloonMl: 10, drawn: 12, code: "unusual-value" },
    { balloonMl: 30, drawn: 12, code: "unusual-value" },
    { balloonMl: null, drawn: 12, code: "" },
  ])("drawn out of a balloon of $balloonMl mL: $drawn mL is $code", ({ balloonMl, drawn, code }) => {
    expect(codeOf("balloonWithdrawnMl", drawn, { balloonMl })).toBe(code);
    expect(codeOf("balloonWithdrawnMl", drawn, { balloonMl, confirmed: [pointer] })).toBe("");
    // Nothing else is compared with the balloon.
    expect(codeOf("urineReturnedMl", drawn, { balloonMl })).toBe("");
  });

  it("that was left out has no fault", () => {
    expect(quantities.map((quantity) => codeOf(quantity, null) + codeOf(quantity, undefined)).join("")).toBe("");
  });

  it("that is unusual passes once it is confirmed, by the pointer of its own field alone", () => {
    expect(codeOf("sizeFr", 22, { confirmed: [pointer] })).toBe("");
    expect(codeOf("sizeFr", 22, { confirmed: ["/other"] })).toBe("unusual-value");
    expect(codeOf("sizeFr", 61, { confirmed: [pointer] })).toBe("out-of-bounds");
  });
});

describe("what is told", () => {
  const told = (quantity: Quantity, value: number, context: object = {}) =>
    boundFaults([{ quantity, value, pointer }], { ...adult, ...context }).map((fault) => fault.detail);

  it("names the bounds in plain words", () => {
    expect(told("sizeFr", 18)).toEqual([
      "The size of an adult's catheter is usually 12 to 16 Fr; up to 24 with clots or for irrigation.",
    ]);
    expect(told("sizeFr", 61)).toEqual(["The size of an adult's catheter is 3 to 30 Fr."]);
    expect(told("attempts", 3)).toEqual(["The number of attempts is usually 1 to 2."]);
    expect(told("urineOutputMl", 20_000)).toEqual(["One amount of urine is 0 to 10,000 mL."]);
    expect(told("balloonMl", 0.6, { ageDays: null })).toEqual([
      "The balloon volume of a catheter is usually 1 to 10 mL.",
    ]);
    expect(told("balloonWithdrawnMl", 2, { balloonMl: 10 })).toEqual([
      "The volume drawn out of the balloon is usually between half and all of what was put in.",
    ]);
  });

  it("finds every fault at once, in the order of the values", () => {
    const values: Charted[] = [
      { quantity: "balloonMl", value: 1000, pointer: "/balloonMl" },
      { quantity: "attempts", value: 2, pointer: "/record/attempts" },
      { quantity: "sizeFr", value: 22, pointer: "/sizeFr" },
    ];
    expect(boundFaults(values, adult).map(({ code, pointer: at }) => `${code} ${at}`)).toEqual([
      "out-of-bounds /balloonMl",
      "unusual-value /sizeFr",
    ]);
  });

  it("never repeats the value, which may be a patient's number", () => {
    fc.assert(
      fc.property(fc.constantFrom(...quantities), fc.integer({ min: 100_000, max: 99_999_999 }), (quantity, value) => {
        const [detail = ""] = told(quantity, value);
        expect(detail).not.toBe("");
        expect(detail.replaceAll(",", "")).not.toContain(String(value));
      }),
    );
  });

  it("is a refusal for good exactly outside what is possible, whatever was confirmed", () => {
    const ages = fc.option(fc.integer({ min: 0, max: 100 * year }));
    const values = fc.oneof(
      fc.double({ min: -200, max: 200, noNaN: true }),
      fc.double({ min: -1e5, max: 1e5, noNaN: true }),
    );
    fc.assert(
      fc.property(fc.constantFrom(...quantities), ages, values, (quantity, ageDays, value) => {
        const { possible } = boundsOf(quantity, ageDays);
        const isPossible = possible.low <= value && value <= possible.high;
        expect(codeOf(quantity, value, { ageDays, confirmed: [pointer] })).toBe(isPossible ? "" : "out-of-bounds");
      }),
    );
  });
});
