import type { Instant } from "../domain/days/day-number.ts";
import { type Course, catheterFrom } from "./course.ts";
import { keptAt, type SceneTimes, stayOn, type TimeAgo } from "./scenes.ts";

const minuteMs = 60_000;

const to = Number.POSITIVE_INFINITY;

/**
 * Patients who are on the wards now, one for each thing that a round says: due, overdue, past the threshold, doubtful,
 * removal decided, prescriber asked; found in place on arrival, and a kind that is not reviewed.
 */
export function scenesOfNow({ now }: SceneTimes, at: TimeAgo): Course[] {
  const ago = (minutes: number) => now - minutes * minuteMs;
  return [...unreviewed(at), ...decisions(at, ago), ...kinds(at)];
}

/** Reviewed until yesterday, past the threshold, or forgotten. */
function unreviewed(at: TimeAgo): Course[] {
  return [
    stayOn("due", { ward: "3W", bed: "2", from: at(3, 8), to }, [
      catheterFrom(at(3, 13), {
        ...{ number: "CX-due", indication: "perioperative" },
        reviews: [keptAt(at(2, 10), "perioperative"), keptAt(at(1, 10), "perioperative")],
      }),
    ]),
    stayOn("overdue", { ward: "ICU", bed: "4", from: at(3, 7), to }, [
      catheterFrom(at(3, 9), {
        ...{ number: "CX-overdue", indication: "output-critically-ill" },
        reviews: [keptAt(at(2, 9), "output-critically-ill"), keptAt(at(1, 9), "output-critically-ill")],
      }),
    ]),
    stayOn("past-threshold", { ward: "4N", bed: "9", from: at(6, 8), to }, [
      catheterFrom(at(6, 12), {
        ...{ number: "CX-past-threshold", indication: "perioperative" },
        reviews: [5, 4, 2, 1].map((day) => keptAt(at(day, 9.5), "perioperative")),
      }),
    ]),
    stayOn("doubtful", { ward: "3E", bed: "11", from: at(5, 8), to }, [
      catheterFrom(at(5, 10), {
        ...{ number: "CX-doubtful", unseen: true },
        reviews: [keptAt(at(4, 9), "retention-or-obstruction")],
      }),
    ]),
  ];
}

/** Decided to be removed, or asked about, within the last hour. */
function decisions(at: TimeAgo, ago: (minutes: number) => Instant): Course[] {
  return [
    stayOn("removal-decided", { ward: "3E", bed: "12", from: at(4, 8), to }, [
      catheterFrom(at(4, 10), {
        ...{ number: "CX-removal-decided" },
        reviews: [keptAt(at(2, 9), "retention-or-obstruction"), decided("remove", ago(50))],
      }),
    ]),
    stayOn("asked", { ward: "3E", bed: "14", from: at(3, 8), to }, [
      catheterFrom(at(3, 12), {
        ...{ number: "CX-asked", indication: "incontinence" },
        reviews: [keptAt(at(2, 9), "incontinence"), decided("ask", ago(40))],
      }),
    ]),
  ];
}

function kinds(at: TimeAgo): Course[] {
  return [
    stayOn("on-arrival", { ward: "3E", bed: "15", from: at(2, 9), to }, [
      catheterFrom(at(2, 9), {
        ...{ number: "CX-on-arrival", inserted: null, indication: null },
        reviews: [keptAt(at(1, 10), "retention-or-obstruction")],
      }),
    ]),
    stayOn("suprapubic", { ward: "4S", bed: "8", from: at(6, 9), to }, [
      catheterFrom(at(6, 11), { number: "CX-suprapubic", kind: "suprapubic" }),
    ]),
  ];
}

function decided(outcome: "remove" | "ask", at: Instant) {
  const note = outcome === "ask" ? "Does the patient still need it?" : null;
  return { at, outcome, indication: null, note, written: at + minuteMs };
}
