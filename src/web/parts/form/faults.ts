import { createContext, use } from "react";
import type { ProblemDocument } from "../../../../shared/problem-document.ts";
import type { Sending } from "../use-recording.ts";

/** What is wrong with a field, and how to mend it. */
export type FieldFault = ProblemDocument["errors"][number];

/** All that was found wrong with what was sent; nothing while it was not refused. */
export function faultsOf(sending: Sending<unknown>): readonly FieldFault[] {
  return sending.state === "refused" ? sending.problem.document.errors : [];
}

/** What was found wrong with one field, named by its JSON pointer: `/record/attempts`. */
export function faultsAt(faults: readonly FieldFault[], pointer: string): readonly FieldFault[] {
  return faults.filter((fault) => fault.pointer === pointer || fault.pointer.startsWith(`${pointer}/`));
}

const scope = createContext("field");

/** Gives the fields within it ids of their own, where a page has several forms with fields of the same name. */
export const FieldScope = scope.Provider;

/** Gives the id of the control of a field, so that a list of faults can lead to it. */
export function useFieldIds(): (pointer: string) => string {
  const prefix = use(scope);
  return (pointer) => `${prefix}${pointer.replaceAll("/", "-")}`;
}
