import { describe, expect, it } from "vitest";
import { cancelMove } from "../../../src/domain/timeline/cancel-move.ts";
import { refusals } from "./refusals.ts";
import { linesOf, timelineOf } from "./written.ts";

const reason = "stayed";

describe("a move taken back", () => {
  it.each([
    {
      title: "lets the time on the ward before it go on",
      before: ["stay 1: 10-", "ward stay 2: A 10-20", "ward stay 3: B 20-"],
      after: ["stay 1: 10-", "ward stay 2: A 10- v2", "ward stay 3: B 20- v2 voided: stayed"],
    },
    {
      title: "gives that ward the time until the next move, and the absence that followed",
      before: ["stay 1: 10-", "ward stay 2: A 10-20", "ward stay 3: B 20-30 then leave", "ward stay 4: C 40-"],
      after: [
        "stay 1: 10-",
        "ward stay 2: A 10-30 then leave v2",
        "ward stay 3: B 20-30 then leave v2 voided: stayed",
        "ward stay 4: C 40-",
      ],
    },
    {
      title: "after time off the wards lets the absence go on",
      before: ["stay 1: 10-50", "ward stay 2: A 10-20 then procedure", "ward stay 3: B 30-50"],
      after: ["stay 1: 10-50", "ward stay 2: A 10-20 then procedure", "ward stay 3: B 30-50 v2 voided: stayed"],
    },
  ])("$title", ({ before, after }) => {
    expect(linesOf(cancelMove(timelineOf(...before), { wardStayId: 3, reason }))).toEqual(after);
  });

  it.each([
    { title: "the stay begins with it", wardStayId: 2, refused: ["first-ward-stay see ward stay 2"] },
    { title: "there is none", wardStayId: 9, refused: ["not-found"] },
  ])("is refused when $title", ({ wardStayId, refused }) => {
    const timeline = timelineOf("stay 1: 10-", "ward stay 2: A 10-20", "ward stay 3: B 20-");
    expect(refusals(() => cancelMove(timeline, { wardStayId, reason }))).toEqual(refused);
  });

  it("cannot be taken back twice", () => {
    const timeline = timelineOf("stay 1: 10-", "ward stay 2: A 10-20", "ward stay 3: B 20-");
    const order = { wardStayId: 3, reason };
    expect(refusals(() => cancelMove(cancelMove(timeline, order), order))).toEqual(["entry-voided see ward stay 3"]);
  });
});
