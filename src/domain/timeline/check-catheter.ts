import type { Fault } from "../../../shared/problems.ts";
import type { Catheter, Stay } from "./timeline.ts";

/** Faults of a catheter's instants, alone and against its stay. Empty when they can be true together. */
export function checkCatheter(stay: Stay, catheter: Catheter): Fault[] {
  return [
    ...insertionFaults(stay, catheter),
    ...removalFaults(stay, catheter),
    ...seenFaults(catheter),
    ...notedFaults(stay, catheter),
  ];
}

function insertionFaults(stay: Stay, catheter: Catheter): Fault[] {
  const pointer = "/insertedAt";
  if (catheter.insertedAt === null)
    return catheter.inPlaceOnArrival
      ? []
      : [
          {
            code: "insertion-unknown",
            pointer,
            detail: "The insertion has no time and the catheter is not recorded as in place on arrival.",
          },
        ];
  const faults: Fault[] = [];
  if (catheter.inPlaceOnArrival && catheter.insertedAt > stay.admittedAt)
    faults.push({
      code: "arrival-contradicts",
      pointer,
      detail: "The catheter is recorded as in place on arrival, and as inserted after it.",
      other: `stay ${stay.id}`,
    });
  if (stay.dischargedAt !== null && catheter.insertedAt >= stay.dischargedAt && catheter.insertedAt > stay.admittedAt)
    faults.push(outside(stay, pointer, "The catheter was inserted after the stay had ended."));
  if (catheter.insertedAt < stay.admittedAt && !catheter.inPlaceOnArrival)
    faults.push(
      outside(stay, pointer, "The insertion is before the admission, so the catheter was in place on arrival."),
    );
  return faults;
}

function removalFaults(stay: Stay, catheter: Catheter): Fault[] {
  const { insertedAt, removedAt, removedAfterAt, removedBeforeAt } = catheter;
  const faults: Fault[] = [];
  const exact = removedAt ?? removedBeforeAt;
  const pointer = removedAt === null ? "/removedBeforeAt" : "/removedAt";
  const ends = (removedAfterAt === null ? 0 : 1) + (removedBeforeAt === null ? 0 : 1);
  if (ends === 1 || (ends === 2 && removedAt !== null)) return [unclearRemoval(ends)];
  if (exact === null) return faults;
  if (insertedAt !== null && Math.min(exact, removedAfterAt ?? exact) < insertedAt)
    faults.push({ code: "removal-before-insertion", pointer, detail: "The removal is before the insertion." });
  if (removedAfterAt !== null && removedBeforeAt !== null && removedBeforeAt < removedAfterAt)
    faults.push({
      code: "end-before-start",
      pointer,
      detail: "The two instants of the removal are in the wrong order.",
    });
  if (Math.max(exact, removedAfterAt ?? exact) <= stay.admittedAt)
    faults.push(outside(stay, pointer, "The catheter was removed before the stay began."));
  return faults;
}

function seenFaults({ insertedAt, removedAt, removedBeforeAt, lastSeenAt }: Catheter): Fault[] {
  if (lastSeenAt === null) return [];
  const gone = removedAt ?? removedBeforeAt;
  const pointer = "/lastSeenAt";
  if (gone !== null && lastSeenAt > gone)
    return [{ code: "seen-after-removal", pointer, detail: "The catheter was confirmed in place after its removal." }];
  if (insertedAt !== null && lastSeenAt < insertedAt)
    return [
      { code: "seen-before-insertion", pointer, detail: "The catheter was confirmed in place before its insertion." },
    ];
  return [];
}

/** Notes say that the catheter was in place; they stay true when its instants are corrected, or are voided first. */
function notedFaults(stay: Stay, { insertedAt, removedAt, removedAfterAt, removedBeforeAt, noted }: Catheter): Fault[] {
  if (!noted) return [];
  const faults: Fault[] = [];
  const later = { code: "seen-after-removal", detail: "A note says that it was in place later." } as const;
  const gone = removedAt ?? removedBeforeAt;
  // A removal between two times counts to the first of them, the last at which it was known to be in place.
  if (gone !== null && noted.last > gone)
    faults.push({ ...later, pointer: removedAt === null ? "/removedBeforeAt" : "/removedAt" });
  else if (removedAfterAt !== null && noted.last > removedAfterAt)
    faults.push({ ...later, pointer: "/removedAfterAt" });
  if (insertedAt !== null && noted.first < insertedAt)
    faults.push({
      code: "seen-before-insertion",
      pointer: "/insertedAt",
      detail: "A note says that it was in place earlier.",
    });
  if (noted.first < stay.admittedAt)
    faults.push(outside(stay, "/admittedAt", "A note about the catheter is before the admission."));
  if (stay.dischargedAt !== null && noted.last > stay.dischargedAt)
    faults.push(outside(stay, "/dischargedAt", "A note about the catheter is after the discharge."));
  return faults;
}

function outside(stay: Stay, pointer: string, detail: string): Fault {
  return { code: "outside-stay", pointer, detail, other: `stay ${stay.id}` };
}

/** A removal is one instant, or two between which it lies: never half of the two, never both at once. */
function unclearRemoval(ends: number): Fault {
  const detail =
    ends === 1
      ? "Of the two times between which the catheter was removed, one is missing."
      : "The removal has a time of its own and two times between which it happened.";
  return { code: "removal-unclear", pointer: "/removedAfterAt", detail };
}
