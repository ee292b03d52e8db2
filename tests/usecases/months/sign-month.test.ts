import { expect, it } from "vitest";
import { signName } from "../../../shared/culture-words.ts";
import { month as monthText } from "../../../shared/day.ts";
import { Problem } from "../../../shared/problems.ts";
import { decideCase } from "../../../src/usecases/cultures/decide-case.ts";
import { recordSigns } from "../../../src/usecases/cultures/record-signs.ts";
import { recordSpecimen } from "../../../src/usecases/cultures/record-specimen.ts";
import { recordNoneFound } from "../../../src/usecases/months/none-found.ts";
import { readMonthFigures } from "../../../src/usecases/months/read-month-figures.ts";
import { signMonth } from "../../../src/usecases/months/sign-month.ts";
import { once } from "../../../src/usecases/once.ts";
import { dischargePatient } from "../../../src/usecases/record/discharge-patient.ts";
import { insertCatheter } from "../../../src/usecases/record/insert-catheter.ts";
import { removeCatheter } from "../../../src/usecases/record/remove-catheter.ts";
import { watchWard } from "../../../src/usecases/settings/watch-ward.ts";
import { type AlderBay, alderBay } from "../../databases/alder-bay.ts";
import { onEachDatabase } from "../../databases/databases.ts";
import { faultsOf } from "../../databases/refusal.ts";
import { sharedStore } from "../../databases/shared-store.ts";
import { utc } from "../../databases/utc.ts";

const month = monthText.parse("2024-03");

/** A culture of 30 March, no sign, with a window that is open until 2 April: no determination can be told before. */
async function marchOn(bay: AlderBay): Promise<number> {
  const months = { fromMonth: monthText.parse("2024-03"), toMonth: null, edition: "us-2024" } as const;
  await watchWard(bay.at("2024-02-01 08:00"), { wardId: bay.a, ...months });
  const { patientId, stayId } = await bay.admit("P1", "2024-03-20 08:00");
  const insertion = { stayId, kind: "indwelling-urethral", inPlaceOnArrival: false } as const;
  const insertedAt = utc("2024-03-20 09:00");
  const { catheterId } = await insertCatheter(bay.at("2024-03-20 09:00"), { ...insertion, insertedAt });
  const specimen = { patientId, kind: "urine", method: "culture", status: "final" } as const;
  const { specimenId } = await recordSpecimen(bay.at("2024-03-31 12:00"), {
    ...{ ...specimen, collectedAt: utc("2024-03-30 08:00") },
    organisms: [{ name: "Escherichia coli", count: ">100000" }],
  });
  const signs = signName.options.map((sign) => ({ sign, finding: "absent" }) as const);
  await recordSigns(bay.at("2024-03-31 13:00"), { patientId, day: utc("2024-03-30 00:00") / 86_400_000, signs });
  await removeCatheter(bay.at("2024-03-31 14:00"), { catheterId, at: utc("2024-03-31 14:00"), seenVersion: 1 });
  const dischargedAt = utc("2024-04-01 12:00");
  await dischargePatient(bay.at("2024-04-01 12:00"), { stayId, dischargedAt });
  await recordNoneFound(bay.at("2024-04-01 13:00"), { wardId: bay.a, month });
  return specimenId;
}

/** Which codes stand against a signature at a time, of what nobody has seen. */
async function refusedAt(bay: AlderBay, time: string): Promise<string[]> {
  const unseen = { month, seen: "0".repeat(64), replaces: 0, reason: null };
  try {
    await signMonth(bay.at(time), unseen);
  } catch (error) {
    if (error instanceof Problem) return error.faults.map(({ code, detail }) => `${code}: ${detail}`);
    throw error;
  }
  return [];
}

onEachDatabase("signing a month", (fresh) => {
  const shared = sharedStore(fresh);

  it("determines first what passing time has changed: once a window is over, its culture is told", async () => {
    const bay = await alderBay(shared.store);
    const caseId = await marchOn(bay);
    expect(await refusedAt(bay, "2024-04-01 15:00")).toEqual([
      expect.stringContaining("A: 1 culture cannot be determined yet."),
    ]);
    // Nobody reads anything meanwhile: the signature itself finds out that no infection came of it.
    const later = "2024-04-05 08:00";
    expect(await refusedAt(bay, later)).toEqual([
      expect.stringContaining("A: 1 positive culture waits for confirmation."),
    ]);
    await decideCase(bay.at(later), { caseId, kind: "confirmation", reason: null });
    const { seen } = await readMonthFigures(bay.at(later), { month });
    const { signature } = await signMonth(bay.at(later), { month, seen, replaces: 0, reason: null });
    expect(signature.number).toBe(1);
  });

  it("sent with a key determines first too, and the key is that of the signature alone", async () => {
    const bay = await alderBay(shared.store);
    const caseId = await marchOn(bay);
    const act = bay.at("2024-04-05 08:00");
    const sign = (seen: string) => {
      const input = { month, seen, replaces: 0, reason: null };
      return once(act, { key: `sign-${bay.facilityId}`, digest: "the same" }, (by) => signMonth(by, input));
    };
    const faults = await faultsOf(() => sign("0".repeat(64)));
    expect(faults.map(({ code, detail }) => `${code}: ${detail}`)).toEqual([
      expect.stringContaining("month-not-ready: A: 1 positive culture waits for confirmation."),
    ]);
    await decideCase(act, { caseId, kind: "confirmation", reason: null });
    const { seen } = await readMonthFigures(act, { month });
    const first = await sign(seen);
    expect(first.signature.number).toBe(1);
    expect(await sign(seen)).toEqual(first);
  });
});
