import { describe, expect, it } from "vitest";
import { drawFrom } from "../../src/demo/draw.ts";
import { drawPath, type Leg } from "../../src/demo/patient-path.ts";
import { type DemoWard, demoWards } from "../../src/demo/wards.ts";

const arrival = Date.UTC(2026, 4, 1, 9, 17);
const hourMs = 3_600_000;

function ward(code: string): DemoWard {
  const found = demoWards.find((w) => w.code === code);
  if (!found) throw new Error(code);
  return found;
}

/** Many ways through the hospital that lead to one ward. */
function paths(code: string, count = 400): Leg[][] {
  const draw = drawFrom(3);
  return Array.from({ length: count }, () => drawPath(draw, ward(code), arrival));
}

describe("an invented patient's way", () => {
  it("begins with the arrival and goes on without being in two places or on the way", () => {
    for (const legs of demoWards.flatMap(({ code }) => paths(code, 100))) {
      expect(legs[0]?.from).toBe(arrival);
      for (const [i, leg] of legs.entries()) {
        expect(leg.to).toBeGreaterThan(leg.from);
        expect(leg.to % 60_000).toBe(0);
        const before = legs[i - 1];
        const away = before && leg.from > before.to;
        if (before && !away) expect(leg.from).toBe(before.to);
        // Only who comes back to the same bed was off the wards in between.
        if (before && away) expect([leg.ward.code, leg.bed]).toEqual([before.ward.code, before.bed]);
      }
    }
  });

  it("may lead through emergency or theater first, and to rehabilitation never through theater", () => {
    const firsts = (code: string) => new Set(paths(code).map((legs) => legs[0]?.ward.code));
    expect(firsts("3W")).toEqual(new Set(["ED", "OR", "3W"]));
    expect(firsts("4S")).toEqual(new Set(["ED", "4S"]));
  });

  it("follows the shares of where patients go next", () => {
    const next = paths("ICU", 1000).map((legs) => {
      const at = legs.findLastIndex((leg) => leg.ward.code === "ICU");
      return legs[at + 1]?.ward.code ?? "home";
    });
    const share = (code: string) => next.filter((went) => went === code).length / next.length;
    expect(share("SDU")).toBeCloseTo(0.7, 1);
    expect(share("3E")).toBeCloseTo(0.2, 1);
    expect(share("home")).toBeCloseTo(0.1, 1);
    expect(share("OR")).toBe(0);
  });

  it("stays in its beds, and holds one for some hours now and then", () => {
    const legs = paths("4S").flat();
    expect(legs.every((leg) => Number(leg.bed) >= 1 && Number(leg.bed) <= leg.ward.beds)).toBe(true);
    expect(new Set(legs.map((leg) => leg.absence))).toEqual(new Set([null, "procedure", "leave"]));
    for (const path of paths("4S"))
      for (const [i, leg] of path.entries()) {
        const next = path[i + 1];
        if (leg.absence !== null && next) expect(next.from - leg.to).toBeLessThanOrEqual(10 * hourMs);
      }
  });
});
