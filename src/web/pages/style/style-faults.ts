import { AnsweredProblem, type ProblemDocument } from "../../../../shared/problem-document.ts";
import { type ProblemCode, problems } from "../../../../shared/problems.ts";
import type { FieldFault } from "../../parts/form/faults.ts";

/** A fault at a field, as the service tells one. */
export function faultAt(pointer: string): FieldFault {
  return fault(pointer, "field-unreadable");
}

function fault(pointer: string, code: ProblemCode): FieldFault {
  const { title, remedy } = problems[code];
  return { pointer, code, detail: `${title}.`, remedy };
}

/** A refusal as the service tells one, at these fields; none for the request as a whole. */
export function refusal(code: ProblemCode, ...pointers: readonly string[]): AnsweredProblem {
  const { title, status } = problems[code];
  const errors = (pointers.length === 0 ? [""] : pointers).map((pointer) => fault(pointer, code));
  const document: ProblemDocument = {
    type: `urn:dwell-ledger:problem:${code}`,
    ...{ title, status, code, errors },
    detail: `${title}.`,
    instance: "req-1",
  };
  return new AnsweredProblem(document);
}
