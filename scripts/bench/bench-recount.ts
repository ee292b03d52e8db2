import { openStore } from "../../src/store/open-store.ts";
import { type BenchResult, timed, written } from "./bench-line.ts";
import { loadDuckDb } from "./duckdb-tables.ts";
import { type HistorySize, historyEnd } from "./history-size.ts";
import { recount, rulesOf } from "./recount.ts";
import { recountInDuckDb } from "./recount-duckdb.ts";
import { differences, totalOf } from "./ward-day-counts.ts";
import { historyFile } from "./write-history.ts";

const dayMs = 86_400_000;

/**
 * A full recount of every ward day from the stored stays against DuckDB. Throws when the two disagree on a ward day.
 */
export async function benchRecount(size: HistorySize): Promise<BenchResult> {
  const { file, writtenS } = await historyFile(size);
  const last = Math.floor(historyEnd / dayMs) + 1;
  // A few days more than the years, so that every stay lies inside.
  const span = { wards: size.wards, first: last - Math.ceil(size.years * 365.25) - 4, last };
  const ours = await timed(() => recount(file, span));
  const store = openStore(file);
  const { census } = await rulesOf(store, span);
  await store.close();
  const load = await timed(() => loadDuckDb(file, census));
  const theirs = await timed(() => recountInDuckDb(load.value.connection, span));
  load.value.close();
  const wrong = differences(ours.value, theirs.value);
  if (wrong > 0) throw new Error(`the recount and DuckDB differ on ${wrong} ward days`);
  const rate = Math.round((size.wardStays + size.catheters) / ours.seconds);
  const baseline = "DuckDB, 2 threads, tables in memory";
  return {
    lines: [
      { what: "full recount, reading included", oursS: ours.seconds, baseline, baselineS: theirs.seconds },
      {
        what: "full recount, reading included",
        oursS: ours.seconds,
        baseline: "DuckDB with loading its tables",
        baselineS: load.seconds + theirs.seconds,
      },
    ],
    notes: [
      `Recount: ${size.wardStays} ward stays and ${size.catheters} catheters of ${size.years} years and ${size.wards} wards, ${rate} rows a second.`,
      `Both found ${totalOf(ours.value.patients)} patient-days and ${totalOf(ours.value.catheters)} catheter-days, equal on every ward day.`,
      `DuckDB loaded its tables from the same SQLite file in ${load.seconds.toFixed(2)} s. ${written("The file", writtenS)}`,
    ],
  };
}
