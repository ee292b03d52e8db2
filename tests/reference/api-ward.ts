import { endpoints } from "../../shared/api/index.ts";
import { call } from "../../shared/call.ts";
import type { Day } from "../../shared/day.ts";
import type { Endpoint, InputOf, OutputOf } from "../../shared/endpoint.ts";
import type { CatheterKind } from "../../shared/vocabulary.ts";
import { buildApp } from "../../src/http/app.ts";
import { localPrincipal } from "../../src/http/principal.ts";
import type { TestDatabase } from "../databases/databases.ts";
import { openHospital } from "../databases/hospital.ts";
import { fullRecord } from "../http/inputs.ts";

/** A ward of a hospital in UTC, spoken to through the API alone, at a time that the test sets. */
export interface ApiWard {
  readonly wardId: number;
  /** Sets the clock of the server. */
  at(time: string): void;
  ask<E extends Endpoint>(endpoint: E, input: InputOf<E>): Promise<OutputOf<E>>;
  admit(admittedAt: string): Promise<number>;
  insert(stayId: number, stretch: Stretch, kind?: CatheterKind): Promise<number>;
  discharge(stayId: number, dischargedAt: string): Promise<unknown>;
  /** The eligibility day of each catheter on the round of a day. */
  eligibilityDays(day: string): Promise<(number | null)[]>;
  close(): Promise<void>;
}

/** When a catheter was put in and taken out, or when it was found that had been in place on arrival. */
export interface Stretch {
  readonly in?: string;
  readonly found?: string;
  readonly out?: string;
  readonly indication?: string;
}

/** Opens the door of a fresh database with one inpatient ward. */
export async function openApiWard(database: TestDatabase): Promise<ApiWard> {
  let now = Date.UTC(2024, 0, 1);
  const hospital = await openHospital(database.url, { now: 0, zone: "UTC" });
  const { store } = hospital;
  const wardId = await hospital.addWard("3E");
  const principalOf = localPrincipal({ store, demo: false });
  const app = await buildApp({ store, clock: () => now, principalOf, version: "1.2.3" });
  const base = await app.listen({ host: "127.0.0.1", port: 0 });
  let keys = 0;
  const ask: ApiWard["ask"] = (endpoint, input) => call(endpoint, input, { base, key: `key-${++keys}` });
  return {
    ...{ wardId, ask, insert: insertion(ask) },
    at: (time) => {
      now = Date.parse(`${time}Z`);
    },
    admit: async (admittedAt) => {
      const names = { identifier: `P${++keys}`, number: `S${keys}` };
      return (await ask(endpoints.admitPatient, { wardId, ...names, admittedAt, bed: "1" })).stayId;
    },
    discharge: (stayId, dischargedAt) => ask(endpoints.dischargePatient, { stayId, dischargedAt, seenVersion: 1 }),
    eligibilityDays: async (day) => {
      const { rows } = await ask(endpoints.readRound, { wardId, day: day as Day });
      return rows.map((row) => row.eligibilityDay);
    },
    close: async () => {
      await app.close();
      await store.close();
      await database.drop();
    },
  };
}

/** Records a catheter that was put in, or found in place, and its removal when it is known. */
function insertion(ask: ApiWard["ask"]): ApiWard["insert"] {
  return async (stayId, { in: insertedAt, found, out, indication = "perioperative" }, kind = "indwelling-urethral") => {
    const measured = { indication, sizeFr: 14, balloonMl: 10, record: fullRecord };
    const { catheterId } =
      insertedAt === undefined
        ? await ask(endpoints.recordCatheterOnArrival, { stayId, kind, foundAt: found ?? "" })
        : await ask(endpoints.insertCatheter, { stayId, kind, insertedAt, ...measured });
    if (out !== undefined) await ask(endpoints.removeCatheter, { catheterId, removedAt: out, seenVersion: 1 });
    return catheterId;
  };
}
