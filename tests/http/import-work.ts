import { readSentFiles } from "../../src/csv/sent-files.ts";
import type { Store } from "../../src/usecases/act.ts";
import { workOnImports } from "../../src/usecases/imports/work-on-imports.ts";
import { watchSignedMonths } from "../../src/usecases/months/watch-signed-months.ts";
import { lookedAt } from "./alder-bay.ts";

/** Does the work that imports wait for, as the service does it twice a second. */
export function workOn(store: Store): Promise<number> {
  return workOnImports({ store: watchSignedMonths(store), now: lookedAt, readFiles: readSentFiles });
}

/** A file of two moves: one that can be stored, and one in line 3 that ends before it began. */
export function movesWithFault(fresh: () => string): string {
  return [
    "stay,patient,ward,from,to",
    `${fresh()},${fresh()},3E,2026-11-10T08:00,2026-11-12T08:00`,
    `${fresh()},${fresh()},3E,2026-11-10T08:00,2026-11-09T08:00`,
    "",
  ].join("\n");
}
