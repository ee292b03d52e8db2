import { Problem, type ProblemCode, problems } from "../../shared/problems.ts";
import type { CsvFault, CsvRefused } from "./items.ts";

/** Where a fault lies; what is left out is not known or not meant. */
export interface FaultPlace {
  readonly file: string;
  readonly line?: number;
  readonly column?: string | null;
  readonly position?: number;
}

/** A fault with the remedy that its code stands for. */
export function faultAt(place: FaultPlace, code: ProblemCode, detail: string): CsvFault {
  const { file, line = null, column = null, position = null } = place;
  return { code, file, line, column, position, detail, remedy: problems[code].remedy };
}

/** The faults of an expected failure at a place. Throws everything else on: it is a bug. */
export function faultsOf(place: FaultPlace, error: unknown): CsvFault[] {
  if (!(error instanceof Problem)) throw error;
  return error.faults.map(({ code, detail }) => faultAt(place, code, detail));
}

/** A file of which nothing behind this place can be read. */
export function refusedFile(file: string, faults: readonly CsvFault[]): CsvRefused {
  return {
    type: "refused",
    file,
    line: faults[0]?.line ?? null,
    raw: "",
    wholeFile: true,
    faults,
    stay: null,
    about: null,
  };
}
