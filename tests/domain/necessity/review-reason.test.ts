import { describe, expect, it } from "vitest";
import { reviewReason } from "../../../src/domain/necessity/review-reason.ts";
import { type Asked, moved, reviewOf } from "./asked-review.ts";
import { rulesWith } from "./written-notes.ts";

describe("the reason of a review", () => {
  it.each<[asked: Asked, reason: string]>([
    [{}, "The review of eligibility day 3 is due by 12:00 on unit A."],
    [{ now: "07/13:00" }, "The review of eligibility day 3 was due by 12:00 on unit A and has not been made."],
    [{ now: "08/13:00" }, "The review of eligibility day 3 was due by 12:00 on unit A and was not made that day."],
    [
      { now: "07/13:00", lines: moved("12:30") },
      "The review of eligibility day 3 was due by 12:00 on unit A and has not been made.",
    ],
    [
      { notes: ["review 3 07/09:10 ask"] },
      "The review of eligibility day 3 is due by 12:00 on unit A. The provider was contacted at 09:10 and has not answered.",
    ],
    [
      { notes: ["review 3 07/09:10 ask"], now: "07/13:00" },
      "The review of eligibility day 3 was due by 12:00 on unit A and has not been made. The provider was contacted at 09:10 and has not answered.",
    ],
    [{ notes: ["review 3 07/09:10 keep for other"] }, "Reviewed at 09:10, still needed."],
    [{ notes: ["review 3 07/09:10 remove"] }, "Reviewed at 09:10, decision: remove."],
    [
      { notes: ["review 3 07/14:30 keep for other"], now: "07/15:00" },
      "Reviewed at 14:30, still needed; it was due by 12:00 on unit A.",
    ],
    [
      { notes: ["review 3 07/14:30 remove written 08/07:00"], now: "08/15:00" },
      "Reviewed at 14:30, decision: remove; it was due by 12:00 on unit A. It was entered on 2024-03-08.",
    ],
    [
      { notes: ["review 3 07/09:10 keep for other written 09/07:00"], now: "09/15:00" },
      "Reviewed at 09:10, still needed. It was entered on 2024-03-09.",
    ],
    [{ day: "05", now: "05/13:00" }, "No review is due: it begins on a later eligibility day."],
    [
      { lines: moved("11:00", "A", "C") },
      "No review is due: at the hour at which it would be due, the catheter was not in place on an inpatient unit.",
    ],
    [
      { lines: ["stay 1: 05/08:00-", "ward stay 2: A 05/08:00-", "catheter 3: 05/09:00- suprapubic"] },
      "No review is due: only indwelling urethral catheters are reviewed.",
    ],
  ])("of %o", (asked, reason) => {
    expect(reviewReason(reviewOf(asked), rulesWith())).toBe(reason);
  });
});
