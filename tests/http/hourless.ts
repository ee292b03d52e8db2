import { defaultSourceSettings } from "../../shared/source-settings.ts";
import { importLines } from "../../src/usecases/imports/import-lines.ts";
import { itemsOf } from "../usecases/imports/files.ts";
import { lookedAt } from "./alder-bay.ts";
import type { Desk } from "./desk.ts";

export interface Hourless {
  readonly patientId: number;
  readonly catheterId: number;
}

/**
 * Two patients of 3E from files that write 00:00 for a day without an hour: `inPlace` has a catheter since November 18,
 * `removed` one from November 15, 09:00 to November 18. Both came to the unit on November 14.
 */
export async function withoutHours(desk: Desk): Promise<Readonly<Record<"inPlace" | "removed", Hourless>>> {
  const { store, people } = desk.hospital;
  const facilityId = await facilityOf(desk);
  const actor = { facilityId, personId: people.prevention, roles: ["prevention" as const], wardIds: [] };
  const act = { store, actor, now: lookedAt };
  const items = itemsOf(
    {
      "moves.csv": [
        "stay,patient,ward,from,to",
        "S-NH1,NH1,3E,2026-11-14T00:00,",
        "S-NH2,NH2,3E,2026-11-14T00:00,2026-11-19T00:00",
      ],
      "catheters.csv": [
        "stay,inserted,removed,last_seen",
        "S-NH1,2026-11-18T00:00,,",
        "S-NH2,2026-11-15T09:00,2026-11-18T00:00,",
      ],
      "specimens.csv": ["stay,kind,collected,organism,count", "S-NH1,urine,2026-11-19T00:00,Escherichia coli,>100000"],
    },
    "America/New_York",
    { ...defaultSourceSettings, midnight: "no-hour" },
  );
  await importLines(act, items, { dryRun: false, setAside: false, assumeInpatient: false });
  const found = async (number: string) => {
    const { id: catheterId, stay } = await store.read((read) =>
      read.db.catheter.findFirstOrThrow({ where: { stay: { number } }, include: { stay: true } }),
    );
    return { catheterId, patientId: stay.patientId };
  };
  return { inPlace: await found("S-NH1"), removed: await found("S-NH2") };
}

async function facilityOf({ hospital }: Desk): Promise<number> {
  const { facilityId } = await hospital.store.read((read) =>
    read.db.ward.findUniqueOrThrow({ where: { id: hospital.wards["3E"] } }),
  );
  return facilityId;
}
