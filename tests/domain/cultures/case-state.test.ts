import { describe, expect, it } from "vitest";
import { determine, timelineOf } from "../../../src/domain/criteria/index.ts";
import { caseStateOf, needsSomebody, reportedText } from "../../../src/domain/cultures/case-state.ts";
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
    ["negative", "closed"],
    ["not-usable", "closed"],
    ["set-aside", "closed"],
    ["gone", "closed"],
  ] as const)("of what nobody decided: %s is %s", (outcome, state) => {
    expect(caseStateOf({ outcome, reported: "a" }, nobody)).toBe(state);
    expect(needsSomebody(outcome)).toBe(state === "waiting");
  });

  it("holds while what is reported is what was decided about, and returns otherwise", () => {
    const event = { outcome: "event", reported: "a" } as const;
    expect(caseStateOf(event, { decision: "confirmation", decided: "a" })).toBe("confirmed");
    expect(caseStateOf(event, { decision: "disagreement", decided: "a" })).toBe("disagreed");
    expect(caseStateOf(event, { decision: "confirmation", decided: "b" })).toBe("changed");
    expect(caseStateOf(event, { decision: "reopening", decided: "a" })).toBe("waiting");
    // What closed itself since is not passed over in silence.
    expect(caseStateOf({ outcome: "gone", reported: "gone" }, { decision: "confirmation", decided: "a" })).toBe(
      "changed",
    );
    expect(caseStateOf({ outcome: "pending", reported: "p" }, { decision: "confirmation", decided: "a" })).toBe(
      "pending",
    );
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
