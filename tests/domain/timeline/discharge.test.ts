import { describe, expect, it } from "vitest";
import { cancelDischarge, discharge } from "../../../src/domain/timeline/discharge.ts";
import { refusals } from "./refusals.ts";
import { linesOf, timelineOf } from "./written.ts";

const at = (dischargedAt: number) => ({ stayId: 1, dischargedAt, disposition: "home" });

describe("a discharge", () => {
  it("ends the stay and the time on the last ward, and leaves the catheter as it is", () => {
    const before = timelineOf("stay 1: 10-", "ward stay 2: A 10-20", "ward stay 3: B 20-", "catheter 4: 12-");
    const after = discharge(before, at(30));
    expect(linesOf(after)).toEqual([
      "stay 1: 10-30 v2",
      "ward stay 2: A 10-20",
      "ward stay 3: B 20-30 v2",
      "catheter 4: 12-",
    ]);
    expect(after.stays[0]?.disposition).toBe("home");
  });

  it("during an absence leaves the ward stays as they are", () => {
    const after = discharge(timelineOf("stay 1: 10-", "ward stay 2: A 10-20 then leave"), at(30));
    expect(linesOf(after)).toEqual(["stay 1: 10-30 v2", "ward stay 2: A 10-20 then leave"]);
  });

  it.each([
    {
      title: "twice",
      lines: ["stay 1: 10-20", "ward stay 2: A 10-20"],
      refused: ["already-discharged see stay 1"],
    },
    {
      title: "before the last move",
      lines: ["stay 1: 10-", "ward stay 2: A 10-35", "ward stay 3: B 35-"],
      refused: ["outside-stay see stay 1", "end-before-start"],
    },
    {
      title: "before the patient left the ward",
      lines: ["stay 1: 10-", "ward stay 2: A 10-35"],
      refused: ["outside-stay see stay 1"],
    },
    {
      title: "before a catheter was put in",
      lines: ["stay 1: 10-", "ward stay 2: A 10-", "catheter 4: 32-"],
      refused: ["outside-stay see stay 1"],
    },
  ])("is refused $title", ({ lines, refused }) => {
    expect(refusals(() => discharge(timelineOf(...lines), at(30)))).toEqual(refused);
  });

  it("before the admission is refused, pointing to the stay", () => {
    const act = () => discharge(timelineOf("stay 1: 40-"), at(30));
    expect(refusals(act)).toEqual(["end-before-start see stay 1"]);
  });
});

it("a stay that followed its moves keeps the end that a person gave it, or took back", () => {
  const following = (...lines: readonly string[]) => {
    const { patientId, stays } = timelineOf(...lines);
    return { patientId, stays: stays.map((stay) => ({ ...stay, spanFromMoves: true })) };
  };
  const ended = discharge(following("stay 1: 10-", "ward stay 2: A 10-"), at(30));
  expect(ended.stays[0]?.spanFromMoves).toBe(false);
  const open = cancelDischarge(following("stay 1: 10-30", "ward stay 2: A 10-30"), 1);
  expect(open.stays[0]?.spanFromMoves).toBe(false);
});

describe("a discharge taken back", () => {
  it("lets the stay and its last time on a ward go on", () => {
    const after = cancelDischarge(timelineOf("stay 1: 10-30", "ward stay 2: A 10-20", "ward stay 3: B 20-30"), 1);
    expect(linesOf(after)).toEqual(["stay 1: 10- v2", "ward stay 2: A 10-20", "ward stay 3: B 20- v2"]);
  });

  it("lets an absence go on that the discharge had ended", () => {
    const after = cancelDischarge(timelineOf("stay 1: 10-30", "ward stay 2: A 10-20 then procedure"), 1);
    expect(linesOf(after)).toEqual(["stay 1: 10- v2", "ward stay 2: A 10-20 then procedure"]);
  });

  it.each([
    { title: "there was none", lines: ["stay 1: 10-"], refused: ["not-discharged see stay 1"] },
    {
      title: "the patient came again since",
      lines: ["stay 1: 10-30", "stay 5: 40-"],
      refused: ["stay-overlaps see stay 5"],
    },
  ])("is refused when $title", ({ lines, refused }) => {
    expect(refusals(() => cancelDischarge(timelineOf(...lines), 1))).toEqual(refused);
  });
});
