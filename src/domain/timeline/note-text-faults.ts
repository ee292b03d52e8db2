import { indications } from "../../../shared/catheter-words.ts";
import type { PolicyBody } from "../../../shared/policy.ts";
import type { Fault } from "../../../shared/problems.ts";
import type { CatheterNote } from "./note.ts";

/** What is wrong with what a note says, by the policy in force where and when it happened. */
export function noteTextFaults(note: CatheterNote, policy: PolicyBody): Fault[] {
  return [
    ...reviewFaults(note),
    ...indicationFaults("/indication", note.indication, policy),
    ...itemFaults(note, policy),
  ];
}

/** A review that keeps the catheter says why; another one has no reason to give. */
function reviewFaults({ kind, outcome, indication }: CatheterNote): Fault[] {
  if (kind !== "review") return [];
  const pointer = "/indication";
  if (outcome === "keep" && indication === null)
    return [{ code: "indication-missing", pointer, detail: "A catheter is kept for a reason, and none is given." }];
  if (outcome !== "keep" && indication !== null)
    return [{ code: "field-unreadable", pointer, detail: "Only a review that keeps the catheter gives a reason." }];
  return [];
}

/** An indication is one of the common list, or one of the policy's own; which of them are accepted is another question. */
export function indicationFaults(pointer: string, code: string | null | undefined, policy: PolicyBody): Fault[] {
  if (code == null || Object.hasOwn(indications, code) || policy.indications.some((own) => own.code === code))
    return [];
  return [{ code: "indication-unknown", pointer, detail: "Neither the common list nor the unit's policy has it." }];
}

function itemFaults({ items }: CatheterNote, policy: PolicyBody): Fault[] {
  const known = policy.bundle.map(({ code }) => code);
  return Object.keys(items ?? {}).flatMap((code) =>
    known.includes(code)
      ? []
      : [
          {
            code: "item-unknown",
            pointer: `/items/${code}`,
            detail: "The policy of the unit does not list this item.",
          },
        ],
  );
}
