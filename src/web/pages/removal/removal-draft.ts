import type { removeCatheter } from "../../../../shared/api/catheters.ts";
import { catheterFaults } from "../../../../shared/bounds/catheter-faults.ts";
import type { InputOf } from "../../../../shared/endpoint.ts";
import { problems } from "../../../../shared/problems.ts";
import type { RemovalRecord } from "../../../../shared/records.ts";
import type { FieldFault } from "../../parts/form/faults.ts";
import type { Catheter } from "../../parts/patient/patient-record.ts";
import { removalText } from "../../texts/removal.ts";

/** What was written down of a removal so far. */
export interface RemovalDraft {
  readonly how: "at" | "between";
  readonly removedAt: string;
  readonly after: string;
  readonly before: string;
  readonly balloonWithdrawnMl: string;
  readonly catheterIntact: boolean | null;
  readonly reason: RemovalRecord["reason"] | null;
  readonly remark: string;
  readonly confirm: readonly string[];
}

/** A removal of now about which nothing else is known yet. */
export function emptyRemoval(now: string): RemovalDraft {
  return {
    ...{ how: "at", removedAt: now, after: "", before: now },
    ...{ balloonWithdrawnMl: "", catheterIntact: null, reason: null, remark: "", confirm: [] },
  };
}

/** What was written down; fields that stayed empty are left out. */
export function removalRecordOf(draft: RemovalDraft): RemovalRecord {
  const { catheterIntact, reason } = draft;
  const typed = draft.balloonWithdrawnMl.trim().replace(",", ".");
  return {
    ...(typed === "" ? {} : { balloonWithdrawnMl: Number(typed) }),
    ...(catheterIntact === null ? {} : { catheterIntact }),
    ...(reason ? { reason } : {}),
    ...(draft.remark.trim() === "" ? {} : { remark: draft.remark.trim() }),
  };
}

/** What is sent; `seenVersion` is the version that the person decided on. */
export function removalInput(
  draft: RemovalDraft,
  catheterId: number,
  seenVersion: number,
): InputOf<typeof removeCatheter> {
  const { how, removedAt, after, before, confirm } = draft;
  const when = how === "at" ? { removedAt } : { removedAfterAt: after, removedBeforeAt: before };
  return { catheterId, seenVersion, ...when, record: removalRecordOf(draft), confirm: [...confirm] };
}

/** The check of the amount that the server makes, while it is typed. */
export function removalFaults(draft: RemovalDraft, catheter: Catheter): FieldFault[] {
  const { kind, balloonMl } = catheter;
  const known = { kind, ageDays: null, confirm: draft.confirm, at: "/record", balloonMl };
  const { balloonWithdrawnMl } = removalRecordOf(draft);
  return catheterFaults(balloonWithdrawnMl === undefined ? {} : { balloonWithdrawnMl }, known).map(
    ({ code, pointer, detail }) => ({ code, pointer, detail, remedy: problems[code].remedy }),
  );
}

/** When it came out, in the words of a draft. */
export function draftedOut({ how, removedAt, after, before }: RemovalDraft): string {
  const spaced = (time: string): string => time.replace("T", " ");
  if (how === "at") return spaced(removedAt);
  return removalText("outBetween", { after: spaced(after), before: spaced(before) });
}
