import { describe, expect, it } from "vitest";
import { checkCatheter } from "../../../src/domain/timeline/check-catheter.ts";
import { faultText } from "./refusals.ts";
import { stayFromLines } from "./written.ts";

function faultsOf(stay: string, catheter: string): string[] {
  const found = stayFromLines(stay, catheter);
  return found.catheters.flatMap((c) => checkCatheter(found, c)).map(faultText);
}

describe("a catheter", () => {
  it.each([
    "catheter 4: 10-",
    "catheter 4: 12-18",
    "catheter 4: 12-12",
    "catheter 4: 12-18..20",
    "catheter 4: 12-18..18",
    "catheter 4: 12- seen 12",
    "catheter 4: 12-18 seen 18",
    "catheter 4: 12-18..20 seen 20",
    // Removed somewhere else, after this stay.
    "catheter 4: 12-60",
    // Nobody knows since when; or it is known, and before the admission.
    "catheter 4: arrived ?-",
    "catheter 4: arrived ?-18",
    "catheter 4: arrived 3-",
    "catheter 4: arrived 3-11",
    "catheter 4: arrived 10-",
  ])("can be true: %s", (line) => {
    expect(faultsOf("stay 1: 10-50", line)).toEqual([]);
  });

  it.each([
    ["without an insertion", "catheter 4: ?-", "insertion-unknown"],
    ["put in before the admission", "catheter 4: 9-", "outside-stay see stay 1"],
    ["put in at the discharge", "catheter 4: 50-", "outside-stay see stay 1"],
    ["in place on arrival and put in after it", "catheter 4: arrived 11-", "arrival-contradicts see stay 1"],
    ["removed before it was put in", "catheter 4: 12-11", "removal-before-insertion"],
    ["found removed by a time before it was put in", "catheter 4: 12-8..11", "removal-before-insertion"],
    ["still in place at a time before it was put in", "catheter 4: 12-11..20", "removal-before-insertion"],
    ["gone before it was still in place", "catheter 4: 12-20..18", "end-before-start"],
    ["removed before the stay", "catheter 4: arrived 3-9", "outside-stay see stay 1"],
    ["removed as the stay began", "catheter 4: arrived ?-10", "outside-stay see stay 1"],
    ["seen after its removal", "catheter 4: 12-18 seen 19", "seen-after-removal"],
    ["seen after it was found gone", "catheter 4: 12-18..20 seen 21", "seen-after-removal"],
    ["seen before it was put in", "catheter 4: 12- seen 11", "seen-before-insertion"],
  ])("cannot have been %s", (_, line, fault) => {
    expect(faultsOf("stay 1: 10-50", line)).toEqual([fault]);
  });

  it("put in at the very instant of a stay of no length is let be", () => {
    expect(faultsOf("stay 1: 10-10", "catheter 4: 10-")).toEqual([]);
  });
});

it.each([
  ["the first time alone", { removedAfterAt: 18, removedBeforeAt: null }],
  ["the second time alone", { removedAfterAt: null, removedBeforeAt: 20 }],
  ["a time of its own beside the two", { removedAt: 19, removedAfterAt: 18, removedBeforeAt: 20 }],
])("a removal between two times is refused with %s", (_what, changes) => {
  const stay = stayFromLines("stay 1: 10-50", "catheter 4: 12-");
  const hours = Object.entries(changes).map(([field, hour]) => [field, hour === null ? null : hour * 3_600_000]);
  const [catheter] = stay.catheters;
  if (!catheter) throw new Error("the line wrote no catheter");
  const faults = checkCatheter(stay, { ...catheter, ...Object.fromEntries(hours) });
  expect(faults.map((fault) => fault.code)).toEqual(["removal-unclear"]);
});

describe("a catheter with notes, the first at 14 and the last at 16", () => {
  const faultsWith = (stay: string, line: string) => {
    const found = stayFromLines(stay, line);
    const [catheter] = found.catheters;
    if (!catheter) throw new Error("the line wrote no catheter");
    return checkCatheter(found, { ...catheter, noted: { first: 14, last: 16 } }).map(
      (fault) => `${faultText(fault)} ${fault.pointer}`,
    );
  };

  it.each([
    ["stay 1: 10-50", "catheter 4: 14-"],
    ["stay 1: 10-50", "catheter 4: 12-16"],
    ["stay 1: 10-50", "catheter 4: 12-16..20"],
    ["stay 1: 10-16", "catheter 4: 12-"],
    ["stay 1: 14-50", "catheter 4: arrived ?-"],
    ["stay 1: 14-50", "catheter 4: arrived 3-"],
  ])("can be true: %s, %s", (stay, line) => {
    expect(faultsWith(stay, line)).toEqual([]);
  });

  it.each([
    ["put in after the first", "stay 1: 10-50", "catheter 4: 15-", ["seen-before-insertion /insertedAt"]],
    ["removed before the last", "stay 1: 10-50", "catheter 4: 12-15", ["seen-after-removal /removedAt"]],
    ["gone before the last", "stay 1: 10-50", "catheter 4: 12-13..15", ["seen-after-removal /removedBeforeAt"]],
    // It counts to the first of the two times, the last at which it was known to be in: a note says that it was later.
    ["perhaps gone before the last", "stay 1: 10-50", "catheter 4: 12-15..20", ["seen-after-removal /removedAfterAt"]],
    [
      "in a stay that ended before the last",
      "stay 1: 10-15",
      "catheter 4: 12-",
      ["outside-stay see stay 1 /dischargedAt"],
    ],
    [
      "in a stay that began after the first",
      "stay 1: 15-50",
      "catheter 4: arrived ?-",
      ["outside-stay see stay 1 /admittedAt"],
    ],
    [
      "in one that began after the first, come along",
      "stay 1: 15-50",
      "catheter 4: arrived 3-",
      ["outside-stay see stay 1 /admittedAt"],
    ],
  ])("cannot have been %s", (_what, stay, line, faults) => {
    expect(faultsWith(stay, line)).toEqual(faults);
  });
});
