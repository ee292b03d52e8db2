import { describe, expect, it } from "vitest";
import { voidCatheter, voidStay, voidWardStay } from "../../../src/domain/timeline/void-entry.ts";
import { refusals } from "./refusals.ts";
import { linesOf, timelineOf } from "./written.ts";

const reason = "another patient";
const record = timelineOf(
  "stay 1: 10-50",
  "ward stay 2: A 10-20",
  "ward stay 3: B 20-50",
  "catheter 4: 14-18",
  "stay 5: 60-",
  "ward stay 6: A 60-",
);

describe("voiding", () => {
  it("a stay voids everything in it, and nothing else", () => {
    expect(linesOf(voidStay(record, 1, reason))).toEqual([
      "stay 1: 10-50 v2 voided: another patient",
      "ward stay 2: A 10-20 v2 voided: another patient",
      "ward stay 3: B 20-50 v2 voided: another patient",
      "catheter 4: 14-18 v2 voided: another patient",
      "stay 5: 60-",
      "ward stay 6: A 60-",
    ]);
  });

  it("a stay keeps the reasons of what was voided in it before", () => {
    const lines = linesOf(voidStay(voidCatheter(record, 4, "no catheter"), 1, reason));
    expect(lines[3]).toBe("catheter 4: 14-18 v2 voided: no catheter");
  });

  it("a ward stay leaves what was before as it is", () => {
    expect(linesOf(voidWardStay(record, 3, reason)).slice(0, 3)).toEqual([
      "stay 1: 10-50",
      "ward stay 2: A 10-20",
      "ward stay 3: B 20-50 v2 voided: another patient",
    ]);
  });

  it("a ward stay ends what was known of the time off the wards before it: now it lasts longer", () => {
    const away = timelineOf(
      "stay 1: 10-50",
      "ward stay 2: A 10-20 then leave",
      "ward stay 3: B 25-30 then procedure",
      "ward stay 4: A 35-50",
    );
    expect(linesOf(voidWardStay(away, 3, reason))).toEqual([
      "stay 1: 10-50",
      "ward stay 2: A 10-20 v2",
      "ward stay 3: B 25-30 then procedure v2 voided: another patient",
      "ward stay 4: A 35-50",
    ]);
    expect(linesOf(voidWardStay(away, 4, reason)).slice(1, 3)).toEqual([
      "ward stay 2: A 10-20 then leave",
      "ward stay 3: B 25-30 v2",
    ]);
  });

  it("the first ward stay is possible while another one stands", () => {
    expect(linesOf(voidWardStay(record, 2, reason))[1]).toBe("ward stay 2: A 10-20 v2 voided: another patient");
  });

  it("a catheter touches it alone", () => {
    const after = linesOf(voidCatheter(record, 4, reason));
    expect(after[3]).toBe("catheter 4: 14-18 v2 voided: another patient");
    expect(after.filter((_, i) => i !== 3)).toEqual(linesOf(record).filter((_, i) => i !== 3));
  });

  it.each([
    {
      title: "the only ward stay of a stay",
      act: () => voidWardStay(record, 6, reason),
      refused: ["first-ward-stay see ward stay 6"],
    },
    {
      title: "the last ward stay that stands",
      act: () => voidWardStay(voidWardStay(record, 2, reason), 3, reason),
      refused: ["first-ward-stay see ward stay 3"],
    },
    {
      title: "a stay twice",
      act: () => voidStay(voidStay(record, 1, reason), 1, reason),
      refused: ["entry-voided see stay 1"],
    },
    {
      title: "a ward stay twice",
      act: () => voidWardStay(voidWardStay(record, 3, reason), 3, reason),
      refused: ["entry-voided see ward stay 3"],
    },
    {
      title: "a catheter of a voided stay",
      act: () => voidCatheter(voidStay(record, 1, reason), 4, reason),
      refused: ["entry-voided see catheter 4"],
    },
    { title: "what does not exist", act: () => voidCatheter(record, 9, reason), refused: ["not-found"] },
  ])("is refused for $title", ({ act, refused }) => {
    expect(refusals(act)).toEqual(refused);
  });
});
