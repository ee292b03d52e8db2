import type { insertCatheter } from "../../../../shared/api/catheters.ts";
import { catheterFaults } from "../../../../shared/bounds/catheter-faults.ts";
import type { InputOf } from "../../../../shared/endpoint.ts";
import { problems } from "../../../../shared/problems.ts";
import type { InsertionRecord } from "../../../../shared/records.ts";
import type { CatheterKind } from "../../../../shared/vocabulary.ts";
import type { FieldFault } from "../../parts/form/faults.ts";

/** What was written down so far. Numbers are kept as they were typed; what is empty was not recorded. */
export interface InsertionDraft {
  readonly kind: CatheterKind;
  readonly insertedAt: string;
  readonly indication: string | null;
  readonly sizeFr: string;
  readonly balloonMl: string;
  readonly attempts: string;
  readonly urineReturnedMl: string;
  readonly patientResponse: string;
  /** Fields of the record that are chosen, not typed. */
  readonly chosen: Readonly<Partial<InsertionRecord>>;
  readonly confirm: readonly string[];
}

/** A draft in which nothing was written down yet. */
export function emptyInsertion(insertedAt: string): InsertionDraft {
  return {
    kind: "indwelling-urethral",
    insertedAt,
    indication: null,
    ...{ sizeFr: "", balloonMl: "", attempts: "", urineReturnedMl: "", patientResponse: "" },
    chosen: {},
    confirm: [],
  };
}

/** A number as it was typed; undefined when nothing was, NaN when it is none. */
function numberOf(text: string): number | undefined {
  const typed = text.trim().replace(",", ".");
  return typed === "" ? undefined : Number(typed);
}

/** What is sent of a draft. */
export function insertionInput(draft: InsertionDraft, stayId: number): InputOf<typeof insertCatheter> {
  const { kind, insertedAt, indication, chosen, confirm } = draft;
  const response = draft.patientResponse.trim();
  const record = {
    ...chosen,
    attempts: numberOf(draft.attempts),
    urineReturnedMl: numberOf(draft.urineReturnedMl),
    patientResponse: response === "" ? undefined : response,
  };
  const given = Object.fromEntries(Object.entries(record).filter(([, value]) => value !== undefined));
  return {
    ...{ stayId, kind, insertedAt, confirm: [...confirm] },
    indication: indication ?? undefined,
    sizeFr: numberOf(draft.sizeFr),
    balloonMl: numberOf(draft.balloonMl),
    record: given as InsertionRecord,
  };
}

/** What can be told to be wrong while it is typed: the same checks of values that the server makes. */
export function faultsWhileTyping(draft: InsertionDraft, ageDays: number | null): FieldFault[] {
  const { kind, confirm } = draft;
  const typed = {
    sizeFr: numberOf(draft.sizeFr),
    balloonMl: numberOf(draft.balloonMl),
    attempts: numberOf(draft.attempts),
    urineReturnedMl: numberOf(draft.urineReturnedMl),
  };
  const faults = catheterFaults(typed, { kind, ageDays, confirm, at: "/record" });
  return faults.map(({ code, pointer, detail }) => ({ code, pointer, detail, remedy: problems[code].remedy }));
}
