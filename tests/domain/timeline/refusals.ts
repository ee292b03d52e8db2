import { type Fault, Problem } from "../../../shared/problems.ts";

/** What an act is refused for, each fault as `code`, or `code see the other record`. Empty when it is not refused. */
export function refusals(act: () => unknown): string[] {
  try {
    act();
    return [];
  } catch (error) {
    if (error instanceof Problem) return error.faults.map(faultText);
    throw error;
  }
}

/** A fault as `code`, or `code see the other record`. */
export function faultText({ code, other }: Fault): string {
  return other === undefined ? code : `${code} see ${other}`;
}
