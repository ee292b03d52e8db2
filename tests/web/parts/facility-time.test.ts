import { describe, expect, it } from "vitest";
import { facilityTime } from "../../../src/web/parts/facility-time.ts";

describe("times of a facility", () => {
  const time = facilityTime("America/New_York");

  it("are those of its own clocks, whatever zone the device is in", () => {
    const at = Date.UTC(2026, 10, 20, 4, 30);
    expect([time.dayOf(at), time.clock(at), time.short(at), time.charted(at)]).toEqual([
      ...["2026-11-19", "23:30", "Nov 19, 23:30", "2026-11-19T23:30"],
    ]);
  });

  it("begin a day at 00:00, never at 24:00", () => {
    expect(time.charted(Date.UTC(2026, 10, 20, 5))).toBe("2026-11-20T00:00");
  });
});
