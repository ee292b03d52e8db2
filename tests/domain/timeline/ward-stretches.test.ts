import { describe, expect, it } from "vitest";
import {
  catheterStretch,
  countsForTheWard,
  standingCatheters,
  wardStretches,
} from "../../../src/domain/timeline/ward-stretches.ts";
import { stayFromLines, wardIds } from "./written.ts";

/** The stretches as text, those that earn ward days marked with `+`. */
function stretchesOf(...lines: string[]): string[] {
  return wardStretches(stayFromLines(...lines)).map((stretch) => {
    const letter = Object.entries(wardIds).find(([, id]) => id === stretch.wardId)?.[0];
    const counts = countsForTheWard(stretch) ? " +" : "";
    return `${stretch.kind} ${letter} ${stretch.start}-${stretch.end ?? ""}${counts}`;
  });
}

describe("a stay as stretches on and off the wards", () => {
  it.each([
    {
      title: "one ward after the other",
      lines: ["stay 1: 10-50", "ward stay 2: A 10-20", "ward stay 3: B 20-50"],
      stretches: ["ward A 10-20 +", "ward B 20-50 +"],
    },
    {
      title: "a procedure with the bed held",
      lines: ["stay 1: 10-", "ward stay 2: A 10-20 then procedure", "ward stay 3: A 30-"],
      stretches: ["ward A 10-20 +", "procedure A 20-30 +", "ward A 30- +"],
    },
    {
      title: "leave, and time that nobody explained",
      lines: ["stay 1: 10-60", "ward stay 2: A 10-20 then leave", "ward stay 3: B 30-40", "ward stay 4: C 50-60"],
      stretches: ["ward A 10-20 +", "leave A 20-30", "ward B 30-40 +", "unknown B 40-50", "ward C 50-60 +"],
    },
    {
      title: "away until the discharge",
      lines: ["stay 1: 10-50", "ward stay 2: A 10-20 then procedure"],
      stretches: ["ward A 10-20 +", "procedure A 20-50 +"],
    },
    {
      title: "still away",
      lines: ["stay 1: 10-", "ward stay 2: A 10-20 then leave"],
      stretches: ["ward A 10-20 +", "leave A 20-"],
    },
    {
      title: "nothing before the first ward",
      lines: ["stay 1: 10-50", "ward stay 2: A 20-50"],
      stretches: ["ward A 20-50 +"],
    },
    {
      title: "a kind of absence that came to nothing",
      lines: ["stay 1: 10-50", "ward stay 2: A 10-20 then procedure", "ward stay 3: B 20-50 then leave"],
      stretches: ["ward A 10-20 +", "ward B 20-50 +"],
    },
  ])("$title", ({ lines, stretches }) => {
    expect(stretchesOf(...lines)).toEqual(stretches);
  });
});

describe("when a catheter was in place", () => {
  it.each([
    ["while it is in", "catheter 4: 12-", "12-50"],
    ["until its removal", "catheter 4: 12-18", "12-18"],
    ["until it was last known to be in place", "catheter 4: 12-18..30", "12-18"],
    ["from the admission when nobody knows since when", "catheter 4: arrived ?-18", "10-18"],
    ["from the admission when it was put in before", "catheter 4: arrived 3-18", "10-18"],
    ["until the discharge when it was removed after it", "catheter 4: 12-70", "12-50"],
    ["never, when it was last known in place before the stay", "catheter 4: arrived ?-8..12", "none"],
  ])("%s", (_, line, expected) => {
    const stay = stayFromLines("stay 1: 10-50", line);
    const [found] = stay.catheters.map((catheter) => catheterStretch(stay, catheter));
    expect(found ? `${found.start}-${found.end}` : "none").toBe(expected);
  });

  it("has no end in a stay that lasts", () => {
    const stay = stayFromLines("stay 1: 10-", "catheter 4: 12-");
    expect(stay.catheters.map((catheter) => catheterStretch(stay, catheter))).toEqual([{ start: 12, end: null }]);
  });

  it("is asked only of catheters that stand", () => {
    const stay = stayFromLines("stay 1: 10-", "catheter 4: 12-", "catheter 5: 12-");
    const catheters = stay.catheters.map((c) => (c.id === 4 ? { ...c, voidReason: "wrong" } : c));
    expect(standingCatheters({ ...stay, catheters }).map((c) => c)).toEqual([stay.catheters[1]]);
  });
});
