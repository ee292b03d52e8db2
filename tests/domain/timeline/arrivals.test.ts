import { describe, expect, it } from "vitest";
import { withArrivals } from "../../../src/domain/timeline/arrivals.ts";
import { voidCatheter } from "../../../src/domain/timeline/void-entry.ts";
import { linesOf, stayFromLines, timelineOf } from "./written.ts";

/** What becomes of a catheter of a stay that begins at 10. */
function arrived(line: string): string | undefined {
  return linesOf({ patientId: 1, stays: [withArrivals(stayFromLines("stay 1: 10-50", line))] })[1];
}

describe("a catheter, after the admission was corrected", () => {
  it.each([
    ["came along when it was put in before it", "catheter 4: 9-", "catheter 4: arrived 9- v2"],
    ["was put in here when that was after it", "catheter 4: arrived 11-", "catheter 4: 11- v2"],
    ["is what was said of it at that very instant", "catheter 4: arrived 10-", "catheter 4: arrived 10-"],
    ["was put in here at that very instant unless said otherwise", "catheter 4: 10-", "catheter 4: 10-"],
    ["came along when nobody knows since when it is in", "catheter 4: arrived ?-", "catheter 4: arrived ?-"],
    ["stays as it is when the times agree", "catheter 4: 12-", "catheter 4: 12-"],
  ])("%s", (_, before, after) => {
    expect(arrived(before)).toBe(after);
  });

  it("is let alone when it was voided", () => {
    const { stays } = voidCatheter(timelineOf("stay 1: 10-50", "catheter 4: 12-", "catheter 5: 13-"), 4, "no catheter");
    const moved = stays.map((stay) => withArrivals({ ...stay, admittedAt: 20 }));
    expect(linesOf({ patientId: 1, stays: moved }).slice(1)).toEqual([
      "catheter 4: 12- v2 voided: no catheter",
      "catheter 5: arrived 13- v2",
    ]);
  });
});

it("a stay whose catheters all agree is the same object", () => {
  const stay = stayFromLines("stay 1: 10-50", "catheter 4: 12-", "catheter 5: arrived 3-");
  expect(withArrivals(stay)).toBe(stay);
});
