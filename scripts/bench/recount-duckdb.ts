import type { DuckDBConnection } from "@duckdb/node-api";
import { addToCounts, emptyCounts, type WardDayCounts } from "./ward-day-counts.ts";

/**
 * The censuses that a stretch of time may meet, a day apart from the first on. A clock change moves them by an hour, so
 * one more is asked on each side.
 */
const candidates = `range(
  (start_at - (SELECT min(taken_at) FROM census)) // 86400000 - 1,
  (coalesce(end_at, (SELECT max(taken_at) FROM census) + 1) - (SELECT min(taken_at) FROM census)) // 86400000 + 2)`;

/**
 * Written apart from the product's counting: the same ward days in one query. A patient has one row a day, that of the
 * earliest stay, and a catheter-day when one was in place in that stay.
 */
const query = `
WITH standing AS (SELECT * FROM stay WHERE void_key = 0),
moves AS (
  SELECT w.*, s.discharged_at, s.patient_id,
    coalesce(lead(w.start_at) OVER (PARTITION BY w.stay_id ORDER BY w.start_at, w.end_at NULLS LAST, w.id), s.discharged_at) AS next_at
  FROM ward_stay w JOIN standing s ON s.id = w.stay_id WHERE w.void_key = 0
),
stretches AS (
  SELECT stay_id, patient_id, ward_id, start_at,
    CASE WHEN absence_after = 'procedure' AND next_at IS NULL THEN end_at
         WHEN absence_after = 'procedure' AND next_at > end_at THEN next_at ELSE end_at END AS end_at
  FROM moves WHERE end_at IS NOT NULL
),
days AS (
  SELECT r.stay_id, r.patient_id, r.ward_id, census.place
  FROM (SELECT *, unnest(${candidates}) AS place FROM stretches) r
  JOIN census ON census.place = r.place AND census.taken_at >= r.start_at AND census.taken_at < r.end_at
),
one AS (
  SELECT p.survivor_id, d.place, min(d.stay_id) AS stay_id, arg_min(d.ward_id, d.stay_id) AS ward_id
  FROM days d JOIN patient p ON p.id = d.patient_id
  JOIN ward_setting t ON t.ward_id = d.ward_id AND t.setting = 'inpatient'
  GROUP BY p.survivor_id, d.place
),
dwell AS (
  SELECT c.stay_id, greatest(coalesce(c.inserted_at, s.admitted_at), s.admitted_at) AS start_at,
    least(coalesce(c.removed_at, c.removed_after_at), s.discharged_at) AS end_at
  FROM catheter c JOIN standing s ON s.id = c.stay_id
  WHERE c.void_key = 0 AND c.kind = 'indwelling-urethral'
),
dwell_days AS (
  SELECT DISTINCT r.stay_id, census.place
  FROM (SELECT stay_id, start_at, end_at, unnest(${candidates}) AS place FROM dwell) r
  JOIN census ON census.place = r.place AND census.taken_at >= r.start_at AND (r.end_at IS NULL OR census.taken_at < r.end_at)
)
SELECT one.ward_id AS ward, census.day AS day, count(*)::int AS patients, count(e.stay_id)::int AS catheters
FROM one JOIN census ON census.place = one.place
LEFT JOIN dwell_days e ON e.stay_id = one.stay_id AND e.place = one.place
GROUP BY 1, 2`;

/** The counts of every ward day, as DuckDB has them from the tables of the history. */
export async function recountInDuckDb(
  connection: DuckDBConnection,
  { wards, first, last }: { wards: number; first: number; last: number },
): Promise<WardDayCounts> {
  const counts = emptyCounts(wards, first, last - first + 1);
  const reader = await connection.runAndReadAll(query);
  for (const [ward, day, patients, catheters] of reader.getRows() as [number, number, number, number][])
    addToCounts(counts, { ward, day, patients, catheters });
  return counts;
}
