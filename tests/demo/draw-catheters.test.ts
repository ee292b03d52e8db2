import { describe, expect, it } from "vitest";
import { drawFrom } from "../../src/demo/draw.ts";
import { drawCatheters, drawIndication } from "../../src/demo/draw-catheters.ts";
import { wardOf } from "../../src/demo/wards.ts";

const hourMs = 3_600_000;
const dayMs = 24 * hourMs;
const draw = drawFrom(3);
const end = 12 * dayMs;
const now = 9 * dayMs;
const legs = [{ ward: wardOf("4N"), bed: "1", from: 0, to: end, absence: null }];
const all = Array.from({ length: 800 }, (_, i) => drawCatheters(draw, { stay: `S${i}`, legs, now }));

describe("drawn catheters", () => {
  it("follow one after another inside the stay, and none is put in or taken out in a time to come", () => {
    for (const catheters of all) {
      let free = 0;
      for (const { start, gone, removed } of catheters) {
        expect(start).toBeGreaterThanOrEqual(free);
        expect(start).toBeLessThan(now);
        expect(gone).toBeGreaterThan(start);
        expect(gone).toBeLessThanOrEqual(end);
        if (removed !== null) expect([removed, removed <= now]).toEqual([gone, true]);
        free = removed ?? end;
      }
    }
    expect(new Set(all.flat().map(({ number }) => number)).size).toBe(all.flat().length);
  });

  it("are sometimes exchanged within the hour, put in again within a day, forgotten, or found on arrival", () => {
    const gaps = all.flatMap((catheters) =>
      catheters
        .slice(1)
        .map((next, i) => ({ reason: catheters[i]?.reason, gap: next.start - (catheters[i]?.gone ?? 0) })),
    );
    const exchanges = gaps.filter(({ reason }) => reason === "exchange");
    const again = gaps.filter(({ reason }) => reason !== "exchange");
    expect(exchanges.length).toBeGreaterThan(0);
    expect(exchanges.every(({ gap }) => gap < hourMs)).toBe(true);
    expect(again.length).toBeGreaterThan(0);
    expect(again.every(({ gap }) => gap > hourMs && gap < dayMs)).toBe(true);
    expect(all.flat().some(({ removed, gone }) => removed === null && gone < now)).toBe(true);
    expect(all.flat().some(({ inserted }) => inserted === null)).toBe(true);
    expect(all.flat().some(({ kind }) => kind === "suprapubic")).toBe(true);
  });

  it("have a reason as often as their ward says, and else none", () => {
    const ward = wardOf("4N");
    const reasons = Array.from({ length: 5000 }, () => drawIndication(draw, ward));
    for (const [code, share] of Object.entries(ward.indications))
      expect(reasons.filter((reason) => reason === code).length / 5000).toBeCloseTo(share, 1);
    const said = Object.values(ward.indications).reduce((a, b) => a + b, 0);
    expect(reasons.filter((reason) => reason === null).length / 5000).toBeCloseTo(1 - said, 1);
  });
});
