import { describe, expect, it } from "vitest";
import { roundState } from "../../../shared/round-states.ts";
import { catheterPresences } from "../../../src/domain/necessity/catheter-presence.ts";
import { confirmationAt } from "../../../src/domain/necessity/confirmation.ts";
import { indicationInForce } from "../../../src/domain/necessity/indication-in-force.ts";
import { reviewOfDay } from "../../../src/domain/necessity/review-of-day.ts";
import { type RoundFlag, roundStates, urgency } from "../../../src/domain/necessity/round-states.ts";
import { builtInPolicy, type PolicyInForce } from "../../../src/domain/policy/policy-in-force.ts";
import type { Mark } from "../../../src/domain/timeline/timeline.ts";
import { march } from "../counting/march-records.ts";
import { ward } from "./asked-review.ts";
import { marchDay, patientFrom, policyWith, rulesWith } from "./written-notes.ts";

interface Shown {
  readonly lines?: readonly string[];
  readonly notes?: readonly string[];
  readonly indication?: string | null;
  readonly marks?: readonly Mark[];
  readonly now: string;
  readonly policy?: PolicyInForce;
}

/** The flags of catheter 3, inserted on 5 March for retention unless said otherwise, at a time. */
function flagsOf({ lines = ward, notes = [], now, policy = builtInPolicy, ...shown }: Shown): RoundFlag[] {
  const at = march(now.slice(0, 2), now.slice(3));
  const rules = rulesWith(policy);
  const [found] = catheterPresences(patientFrom(lines, notes), rules, at);
  if (!found) throw new Error("the record has a catheter");
  const { indication: code = "retention-or-obstruction", marks = [] } = shown;
  const stay = { ...found.stay, marks };
  const presence = { ...found, stay, catheter: { ...found.catheter, indication: code, marks } };
  const review = reviewOfDay(presence, marchDay(now.slice(0, 2)), rules, at);
  const indication = indicationInForce(presence, at, policy.body);
  const confirmation = confirmationAt(presence, at, policy.body);
  return roundStates({ presence, at, policy, review, indication, confirmation, rules });
}

const statesOf = (shown: Shown) => flagsOf(shown).map(({ state }) => state);
/** The reason of the only flag of a state. */
function reasonOf(state: string, shown: Shown): string | undefined {
  const [flag, another] = flagsOf(shown).filter((one) => one.state === state);
  expect(another).toBeUndefined();
  return flag?.reason;
}

describe("the states of a catheter", () => {
  const reviewed = [
    "review 3 06/09:00 keep for retention-or-obstruction",
    "review 3 07/09:00 keep for retention-or-obstruction",
  ];
  it.each<[title: string, shown: Shown, states: string[]]>([
    ["are none on a day that owes nothing", { now: "05/10:00" }, []],
    ["are what the day's review is", { now: "06/10:00" }, ["due"]],
    ["are what the day's review is, once it is made", { now: "07/10:00", notes: reviewed }, ["done"]],
    [
      "name a question that nobody answered, beside a review that was due",
      { now: "06/13:00", notes: ["review 3 06/09:00 ask"] },
      ["overdue", "asked"],
    ],
    ["name a question of today once", { now: "06/10:00", notes: ["review 3 06/09:00 ask"] }, ["asked"]],
    [
      "name a question of an earlier day that is still open",
      { now: "07/10:00", notes: ["review 3 06/09:00 ask"] },
      ["asked", "due"],
    ],
    [
      "no longer name a question once it is answered",
      { now: "07/10:00", notes: ["review 3 06/09:00 ask", "review 3 07/09:00 keep for end-of-life"] },
      ["done"],
    ],
    [
      "name a question that was put after the day's review",
      { now: "06/13:00", notes: ["review 3 06/09:00 keep for other", "review 3 06/10:00 ask"] },
      ["asked", "indication-outside", "done"],
    ],
    [
      "name a removal that was decided and not carried out",
      { now: "06/10:00", notes: ["review 3 06/09:00 remove"] },
      ["removal-decided", "done"],
    ],
    [
      "go on naming it, also while the prescriber is asked",
      { now: "07/10:00", notes: ["review 3 06/09:00 remove", "review 3 07/09:00 ask"] },
      ["removal-decided", "asked"],
    ],
    [
      "no longer name it once a review keeps the catheter",
      { now: "07/10:00", notes: ["review 3 06/09:00 remove", "review 3 07/09:00 keep for end-of-life"] },
      ["done"],
    ],
    ["do not know what comes later", { now: "06/08:00", notes: ["review 3 06/09:00 remove"] }, ["due"]],
    [
      "name a threshold that is passed",
      { now: "07/10:00", notes: reviewed, indication: null, policy: policyWith({ thresholdDays: 2 }) },
      ["past-threshold", "done"],
    ],
    ["name a missing indication", { now: "05/10:00", indication: null }, ["indication-missing"]],
    [
      "name an indication that the policy does not accept",
      { now: "05/10:00", indication: "incontinence" },
      ["indication-outside"],
    ],
    ["name the doubt", { now: "07/09:00" }, ["doubtful", "due"]],
    [
      "put first what needs doing first",
      {
        now: "08/13:00",
        indication: "incontinence",
        notes: ["review 3 05/10:00 ask"],
        policy: policyWith({ thresholdDays: 2 }),
      },
      ["overdue", "past-threshold", "doubtful", "asked", "indication-outside"],
    ],
    [
      "of another kind are the doubt alone",
      { now: "08/13:00", indication: null, lines: [...ward.slice(0, 2), "catheter 3: 05/09:00- suprapubic"] },
      ["doubtful"],
    ],
  ])("%s", (_, shown, states) => {
    expect(statesOf(shown)).toEqual(states);
  });

  it("have the words and the order of what is answered", () => {
    expect(roundState.options.map((state) => urgency(state))).toEqual(roundState.options.map((_, i) => i));
  });
});

describe("the reason of a state", () => {
  it("of a review is the review's own, with the policy that it was due by", () => {
    const [flag] = flagsOf({ now: "06/13:00", policy: policyWith({}, { number: 4 }) });
    expect(flag).toEqual({
      state: "overdue",
      reason: "The review of eligibility day 2 was due by 12:00 on unit A and has not been made.",
      policy: {
        number: 4,
        wardId: null,
        sentence:
          "Policy of the facility, version 4, from 2024-01-01: a catheter is reviewed every day from eligibility day 2 on, by 12:00.",
      },
    });
  });

  it("names days and times", () => {
    expect(reasonOf("asked", { now: "07/10:00", notes: ["review 3 06/09:00 ask"] })).toBe(
      "The provider was contacted at 2024-03-06 09:00 and has not answered.",
    );
    expect(reasonOf("removal-decided", { now: "07/10:00", notes: ["review 3 06/09:00 remove"] })).toBe(
      "The review of 2024-03-06 09:00 decided to remove it, and it is still in place.",
    );
    expect(reasonOf("doubtful", { now: "07/09:00" })).toBe(
      "It was last confirmed in place at 2024-03-05 09:00; from 2024-03-07 09:00 on it is doubtful whether it is in place.",
    );
    const arrived =
      "No sighting is recorded since the admission at 2024-03-05 08:00; from 2024-03-07 08:00 on it is doubtful whether it is in place.";
    for (const inserted of ["?", "01/09:00"])
      expect(
        reasonOf("doubtful", { now: "07/09:00", lines: [...ward.slice(0, 2), `catheter 3: arrived ${inserted}-`] }),
      ).toBe(arrived);
  });

  it("names a day alone where the hour is not recorded", () => {
    expect(reasonOf("doubtful", { now: "07/09:00", marks: ["no-hour:insertedAt"] })).toBe(
      "It was last confirmed in place on 2024-03-05, hour not recorded; from 2024-03-07 on it is doubtful whether it is in place.",
    );
    const lines = [...ward.slice(0, 2), "catheter 3: arrived ?-"];
    expect(reasonOf("doubtful", { now: "07/09:00", lines, marks: ["no-hour:admittedAt"] })).toBe(
      "No sighting is recorded since the admission on 2024-03-05, hour not recorded; from 2024-03-07 on it is doubtful whether it is in place.",
    );
  });

  it("names the threshold, the indication and the rule behind each", () => {
    const policy = policyWith({ thresholdDays: 2, thresholdByIndication: { "end-of-life": 3 } }, { wardId: 101 });
    expect(reasonOf("past-threshold", { now: "07/10:00", policy })).toBe(
      "Eligibility day 3 is past the threshold, day 2.",
    );
    expect(reasonOf("past-threshold", { now: "08/10:00", policy, indication: "end-of-life" })).toBe(
      'Eligibility day 4 is past the threshold of "Comfort at the end of life", day 3.',
    );
    expect(reasonOf("indication-missing", { now: "05/10:00", indication: null })).toBe("No indication was recorded.");
    expect(reasonOf("indication-outside", { now: "05/10:00", indication: "incontinence" })).toBe(
      '"Incontinence care" is not an indication that the policy accepts.',
    );
    const flags = flagsOf({ now: "08/13:00", policy, indication: "incontinence", notes: ["review 3 06/09:00 remove"] });
    expect(flags.map(({ state, policy: by }) => `${state}: ${by.sentence.split(": ")[1]?.slice(0, 26)}`)).toEqual([
      "overdue: a catheter is reviewed eve",
      "past-threshold: a catheter is past the thr",
      "doubtful: a catheter not confirmed i",
      "removal-decided: a catheter is reviewed eve",
      "indication-outside: a catheter is accepted for",
    ]);
    expect(new Set(flags.map(({ policy: by }) => by.sentence.split(",")[0]))).toEqual(new Set(["Policy of unit A"]));
  });
});
