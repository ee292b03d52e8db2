/** Patients and catheters of every ward on every day: cell `ward * days + (day - first)`, wards by id. */
export interface WardDayCounts {
  readonly first: number;
  readonly days: number;
  readonly patients: Int32Array;
  readonly catheters: Int32Array;
}

/** Counts of wards 1 to `wards` from day `first` on, all 0. */
export function emptyCounts(wards: number, first: number, days: number): WardDayCounts {
  const cells = (wards + 1) * days;
  return { first, days, patients: new Int32Array(cells), catheters: new Int32Array(cells) };
}

/** Adds one patient-day, or several of a day at once. */
export function addToCounts(
  counts: WardDayCounts,
  { ward, day, patients, catheters }: { ward: number; day: number; patients: number; catheters: number },
): void {
  const cell = ward * counts.days + day - counts.first;
  counts.patients[cell] = (counts.patients[cell] ?? 0) + patients;
  counts.catheters[cell] = (counts.catheters[cell] ?? 0) + catheters;
}

/** How many ward days differ between two counts of the same wards and days. */
export function differences(a: WardDayCounts, b: WardDayCounts): number {
  if (a.first !== b.first || a.patients.length !== b.patients.length) throw new Error("counts of other wards or days");
  let count = 0;
  for (const [cell, patients] of a.patients.entries())
    if (patients !== b.patients[cell] || a.catheters[cell] !== b.catheters[cell]) count += 1;
  return count;
}

/** The sum of all cells. */
export function totalOf(cells: Int32Array): number {
  return cells.reduce((sum, count) => sum + count, 0);
}
