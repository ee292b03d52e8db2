import { type IntakeLine, placeOf } from "../../domain/intake/intake-line.ts";
import type { LineFault } from "../../domain/intake/outcome.ts";

/** First letters of group keys: wards come first, then patients, then counts made by hand. */
export const groupKinds = { ward: "1 ", patient: "2 ", lostStay: "2s ", count: "3 " } as const;

/**
 * Sorts lines into groups that are applied together: everything about one patient, whatever file it stands in. Lines
 * come in the order wards, stays, moves, catheters, counts, so that the patient of a stay is known before its catheters.
 */
export function groupsOf(): {
  /** Stays that catheter lines name and no line before them described: the database may know them. */
  unknownStays(lines: readonly IntakeLine[]): string[];
  keyOf(line: IntakeLine, ownerOf: (stay: string) => string | undefined): { key: string; fault: LineFault | null };
} {
  const patientOf = new Map<string, { patient: string; place: string }>();
  return {
    unknownStays: (lines) => [
      ...new Set(
        lines.flatMap((l) => (l.file === "catheters.csv" && !patientOf.has(l.values.stay) ? [l.values.stay] : [])),
      ),
    ],
    keyOf(line, ownerOf) {
      if (line.file === "wards.csv") return { key: groupKinds.ward + line.values.ward, fault: null };
      if (line.file === "daily-counts.csv") return { key: groupKinds.count + line.values.ward, fault: null };
      const { stay } = line.values;
      const known = patientOf.get(stay);
      if (line.file === "catheters.csv") {
        const patient = known?.patient ?? ownerOf(stay);
        const key = patient === undefined ? groupKinds.lostStay + stay : groupKinds.patient + patient;
        return { key, fault: null };
      }
      const { patient } = line.values;
      if (!known) patientOf.set(stay, { patient, place: placeOf(line) });
      return {
        key: groupKinds.patient + patient,
        fault:
          known && known.patient !== patient
            ? {
                code: "stay-of-another-patient",
                column: "patient",
                detail: "Another line says that this stay belongs to another patient.",
                other: known.place,
              }
            : null,
      };
    },
  };
}
