import { describe, expect, it } from "vitest";
import { determine, timelineOf } from "../../../src/domain/criteria/index.ts";
import type { Story } from "../../../src/domain/criteria/story.ts";
import { caseStateOf, needsPerson, reportedText } from "../../../src/domain/cultures/case-state.ts";
import { us2024 } from "../../../src/domain/editions/us-2024.ts";

const nobody = { decision: null, decided: null } as const;

describe("how far the work on a culture is", () => {
  it.each([
    ["event", "waiting"],
    ["not-met", "waiting"],
    ["repeat", "waiting"],
    ["cannot-tell", "waiting"],
    ["excluded", "waiting"],
    ["pending", "pending"],
    ["set-aside", "waiting"],
  ] as const)("of what is not certain and no one decided: %s is %s", (outcome, state) => {
    const closing = { outcome, closes: false };
    expect(caseStateOf({ ...closing, reported: "a", isOutOfScope: false }, nobody)).toBe(state);
    expect(needsPerson(closing)).toBe(state === "waiting");
  });

  it.each(["negative", "not-usable", "set-aside", "gone"] as const)("closes what is certain: %s", (outcome) => {
    const closing = { outcome, closes: true };
    expect(caseStateOf({ ...closing, reported: "a", isOutOfScope: false }, nobody)).toBe("closed");
    expect(needsPerson(closing)).toBe(false);
  });

  it("holds while what is reported is what was decided about, and returns otherwise", () => {
    const event = { outcome: "event", closes: false, reported: "a", isOutOfScope: false } as const;
    expect(caseStateOf(event, { decision: "confirmation", decided: "a" })).toBe("confirmed");
    expect(caseStateOf(event, { decision: "disagreement", decided: "a" })).toBe("disagreed");
    expect(caseStateOf(event, { decision: "confirmation", decided: "b" })).toBe("changed");
    expect(caseStateOf(event, { decision: "reopening", decided: "a" })).toBe("waiting");
    const confirmed = { decision: "confirmation", decided: "a" } as const;
    // What is closed automatically since is shown.
    expect(caseStateOf({ ...event, outcome: "gone", closes: true, reported: "gone" }, confirmed)).toBe("changed");
    expect(caseStateOf({ ...event, outcome: "pending", reported: "p" }, confirmed)).toBe("pending");
  });

  it("is none out of scope: nothing waits, before a decision or after one, and what was confirmed stays confirmed", () => {
    const out = (outcome: "event" | "pending" | "cannot-tell" | "negative") =>
      ({ outcome, closes: outcome === "negative", reported: "a", isOutOfScope: true }) as const;
    for (const outcome of ["event", "pending", "cannot-tell"] as const)
      expect(caseStateOf(out(outcome), nobody)).toBe("out-of-scope");
    expect(caseStateOf(out("negative"), nobody)).toBe("closed");
    expect(caseStateOf(out("event"), { decision: "confirmation", decided: "a" })).toBe("confirmed");
    expect(caseStateOf(out("event"), { decision: "confirmation", decided: "b" })).toBe("out-of-scope");
    expect(caseStateOf(out("event"), { decision: "reopening", decided: "a" })).toBe("out-of-scope");
  });
});

describe("what is reported of a determination", () => {
  const grew = [["Escherichia coli", ">100000"]] as const;
  const story = { catheters: [[2, null]], urine: [{ day: 10, grew }], signs: [{ day: 10, sign: "38.6" }] } as const;
  const reported = (more: object = {}) => reportedText(determine(timelineOf({ ...story, ...more }), us2024)[0] ?? null);

  it("does not hang on a sign more, and does on the day, the ward and an organism that a repeat adds", () => {
    const signs = [...story.signs, { day: 11, sign: "suprapubic-tenderness" }];
    expect(reported({ signs })).toBe(reported());
    expect(reported({ signs: [{ day: 9, sign: "38.6" }] })).not.toBe(reported());
    expect(reported({ wards: [[2, 1, null]] })).not.toBe(reported());
    const again = { day: 15, grew: [["Proteus mirabilis", ">100000"]] };
    const anew = [...story.signs, { day: 15, sign: "38.6" }];
    expect(reported({ urine: [...story.urine, again], signs: anew })).not.toBe(reported());
  });
});

describe("what closes automatically", () => {
  const closes = (more: Partial<Story>) => determine(timelineOf({ ...more }), us2024)[0]?.closes;
  const grew = [["Escherichia coli", ">100000"]] as const;

  it.each<[string, Partial<Story>, boolean]>([
    ["no growth", { urine: [{ day: 10 }] }, true],
    ["mixed flora", { urine: [{ day: 10, grew: [["mixed flora", null]] }] }, true],
    ["withdrawn", { urine: [{ day: 10, grew, status: "withdrawn" }] }, true],
    ["withdrawn, dated in the future", { urine: [{ day: 10, grew, status: "withdrawn" }], knownThrough: 9 }, true],
    ["dated in the future", { urine: [{ day: 10, grew }], knownThrough: 9 }, false],
    ["on no inpatient ward", { wards: [[1, 1, 10, "outpatient"]], urine: [{ day: 10, grew }] }, false],
    ["pending", { urine: [{ day: 10, status: "pending" }] }, false],
    ["no infection", { urine: [{ day: 10, grew }] }, false],
  ])("%s", (_title, story, expected) => {
    expect(closes(story)).toBe(expected);
  });
});
