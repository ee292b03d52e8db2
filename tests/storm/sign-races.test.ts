import { afterAll, beforeAll, expect, it } from "vitest";
import { month as monthText } from "../../shared/day.ts";
import { Problem } from "../../shared/problems.ts";
import { dayMs } from "../../src/domain/days/day-number.ts";
import { monthDays } from "../../src/domain/days/month.ts";
import type { Act } from "../../src/usecases/act.ts";
import { readMonthFigures } from "../../src/usecases/months/read-month-figures.ts";
import { readMonthSignatures, readSignedMonth } from "../../src/usecases/months/read-signatures.ts";
import { signMonth } from "../../src/usecases/months/sign-month.ts";
import { admitPatient } from "../../src/usecases/record/admit-patient.ts";
import { dischargePatient } from "../../src/usecases/record/discharge-patient.ts";
import { insertCatheter } from "../../src/usecases/record/insert-catheter.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { type Hospital, openHospital } from "../databases/hospital.ts";

const hourMs = 3_600_000;
/** On each database, two in a race: 200 on both. */
const signings = Number(process.env.SIGNINGS ?? 100);
const races = signings / 2;
/** The late entry begins after so many turns at most: some come before the signature reads, some after. */
const turnsMost = 20;

onEachDatabase(`a month signed twice while somebody records late, SIGNINGS=${signings}`, (fresh, kind) => {
  let hospital: Hospital;
  let wardId: number;
  let act: Act;
  let drop: () => Promise<void>;
  beforeAll(async () => {
    const database = await fresh();
    drop = database.drop;
    hospital = await openHospital(database.url, { now: 0, zone: "Etc/UTC" });
    wardId = await hospital.addWard("3E");
    act = hospital.at(Date.UTC(2126, 0, 2));
  });
  afterAll(async () => {
    await hospital?.store.close();
    await drop?.();
  });

  /** A stay of two nights in the month, and a catheter that is recorded late. */
  async function stayIn(number: string, start: number): Promise<() => Promise<unknown>> {
    const patient = { identifier: number };
    const { stayId } = await admitPatient(act, { patient, number, admittedAt: start, wardId });
    await dischargePatient(act, { stayId, dischargedAt: start + 3 * dayMs });
    const insertion = { kind: "indwelling-urethral", inPlaceOnArrival: false, insertedAt: start + hourMs } as const;
    return () => insertCatheter(act, { stayId, ...insertion, removedAt: start + 2 * dayMs + hourMs });
  }

  it(
    "has one signature, which holds the figures before the late entry or after it, and the rest is a difference",
    async () => {
      const outcomes = { before: 0, after: 0, refused: 0 };
      for (let i = 0; i < races; i++) {
        // A month of its own for each race.
        const month = monthText.parse(`${2010 + Math.floor(i / 12)}-${String((i % 12) + 1).padStart(2, "0")}`);
        const edit = await stayIn(`S-${i}`, (monthDays(month).first + 5) * dayMs);
        const { seen } = await readMonthFigures(act, { month });
        const sign = () => signMonth(act, { month, seen, replaces: 0, reason: null }).then(() => null, refusalOf);
        const late = () => turns(Math.round((turnsMost * i) / races)).then(edit);
        const results = await Promise.all([sign, late, sign].map((racer) => racer()));
        const refused = results.filter((result) => typeof result === "string");
        const { signatures, differences } = await readMonthSignatures(act, { month });
        const story = `${kind}, race ${i}: ${JSON.stringify(results)}`;
        expect(signatures.length, story).toBeLessThanOrEqual(1);
        expect(refused.length + signatures.length, story).toBe(2);
        outcomes.refused += refused.length;
        if (signatures.length === 0) {
          // Both came after the late entry, and neither signed what it had not seen.
          expect(refused, story).toEqual(["month-changed", "month-changed"]);
          outcomes.after += 1;
          continue;
        }
        const { report } = await readSignedMonth(act, { month, number: 1 });
        const days = report.total.figures.find(({ key }) => key === "catheter_days")?.value;
        // What was seen has no catheter; the late entry shows as a difference, and is lost nowhere.
        expect(days, story).toBe(0);
        expect(differences, story).toContainEqual(
          expect.objectContaining({ figure: "catheter_days", signed: 0, now: 2 }),
        );
        outcomes.before += 1;
      }
      process.stdout.write(`${kind}: ${JSON.stringify(outcomes)}\n`);
      expect(outcomes.before + outcomes.after).toBe(races);
      expect(outcomes.before).toBeGreaterThan(0);
    },
    signings * 2_000,
  );
});

async function turns(count: number): Promise<void> {
  for (let i = 0; i < count; i++) await new Promise((resolve) => setImmediate(resolve));
}

function refusalOf(error: unknown): string {
  if (error instanceof Problem) return error.code;
  throw error;
}
