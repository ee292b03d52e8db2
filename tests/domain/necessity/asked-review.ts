import { catheterPresences } from "../../../src/domain/necessity/catheter-presence.ts";
import { type ReviewOfDay, reviewOfDay } from "../../../src/domain/necessity/review-of-day.ts";
import type { PolicyInForce } from "../../../src/domain/policy/policy-in-force.ts";
import { march } from "../counting/march-records.ts";
import { wardIds } from "../timeline/written.ts";
import { marchDay, patientFrom, policyWith, rulesWith } from "./written-notes.ts";

/** A patient on ward A with catheter 3 from 5 March on. */
export const ward = ["stay 1: 05/08:00-", "ward stay 2: A 05/08:00-", "catheter 3: 05/09:00-"];

/** What to ask; left out: that patient, no notes, 7 March at 10:00, the built-in policy. */
export interface Asked {
  readonly lines?: readonly string[];
  readonly notes?: readonly string[];
  readonly day?: string;
  readonly now?: string;
  readonly policy?: PolicyInForce | ((wardId: number) => PolicyInForce);
}

/** The review of catheter 3 on a day of March, as it stood at a time. */
export function reviewOf({ lines = ward, notes = [], day = "07", now = "07/10:00", policy }: Asked): ReviewOfDay {
  const at = march(now.slice(0, 2), now.slice(3));
  const rules = rulesWith(policy);
  const presence = catheterPresences(patientFrom(lines, notes), rules, at).find(({ catheter }) => catheter.id === 3);
  if (!presence) throw new Error("catheter 3 was not there yet");
  return reviewOfDay(presence, marchDay(day), rules, at);
}

/** The same patient, moved on 7 March. */
export const moved = (time: string, from = "A", to = "B") => [
  ...[
    "stay 1: 05/08:00-",
    `ward stay 2: ${from} 05/08:00-07/${time}`,
    `ward stay 4: ${to} 07/${time}-`,
    "catheter 3: 05/09:00-",
  ],
];
/** B reviews by 14:00, A by 10:00. */
export const hours = (wardId: number) =>
  policyWith({ reviewDueAt: wardId === wardIds.B ? "14:00" : "10:00" }, { wardId });
