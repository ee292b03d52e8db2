import { expect, it } from "vitest";
import { month as monthText } from "../../../shared/day.ts";
import { Problem } from "../../../shared/problems.ts";
import { dayMs } from "../../../src/domain/days/day-number.ts";
import { defaultPolicy } from "../../../src/domain/policy/default-policy.ts";
import { signedMonthChanges } from "../../../src/store/signed-month-changes.ts";
import type { Store } from "../../../src/store/store.ts";
import type { Act } from "../../../src/usecases/act.ts";
import { readMonthFigures } from "../../../src/usecases/months/read-month-figures.ts";
import { signMonth } from "../../../src/usecases/months/sign-month.ts";
import { type Asking, watchSignedMonths } from "../../../src/usecases/months/watch-signed-months.ts";
import { admitPatient } from "../../../src/usecases/record/admit-patient.ts";
import { insertCatheter } from "../../../src/usecases/record/insert-catheter.ts";
import { mergePatients, unmergePatients } from "../../../src/usecases/record/merge-patients.ts";
import { voidCatheter } from "../../../src/usecases/record/void-entry.ts";
import { changeFacility } from "../../../src/usecases/settings/change-facility.ts";
import { setPolicy } from "../../../src/usecases/settings/set-policy.ts";
import { describeWard } from "../../../src/usecases/wards/describe-ward.ts";
import { alderBay } from "../../databases/alder-bay.ts";
import { onEachDatabase } from "../../databases/databases.ts";
import { sharedStore } from "../../databases/shared-store.ts";
import { utc } from "../../databases/utc.ts";

const later = "2028-01-03 08:00";
const asking: Asking = { acknowledged: null, reach: {} };

onEachDatabase("a store that looks after signed months", (fresh) => {
  const shared = sharedStore(fresh);

  /** A hospital with a stay of five days in each of these months, all of them signed. */
  async function signed(months: readonly string[]) {
    const bay = await alderBay(shared.store);
    const stays: number[] = [];
    for (const month of months)
      stays.push((await bay.stay(`P ${month}`, `${month}-10 08:00`, `${month}-15 08:00`)).stayId);
    for (const text of months) {
      const month = monthText.parse(text);
      const { seen } = await readMonthFigures(bay.at(later), { month });
      await signMonth(bay.at(later), { month, seen, replaces: 0, reason: null });
    }
    return { bay, stays };
  }

  /** How often the work of a transaction runs: it is run again when it touches a signed month. */
  function counting(store: Store): { store: Store; runs: () => number } {
    let runs = 0;
    const tx: Store["tx"] = (work, options) =>
      store.tx((opened) => {
        runs += 1;
        return work(opened);
      }, options);
    return { store: { ...store, tx }, runs: () => runs };
  }

  const insert = (act: Act, stayId: number, at: string) =>
    insertCatheter(act, {
      ...{ stayId, kind: "indwelling-urethral", inPlaceOnArrival: false },
      ...{ insertedAt: utc(at), removedAt: utc(at) + 2 * dayMs },
    });
  const changesOf = ({ store, actor }: Act, month: string) =>
    store.read((read) => signedMonthChanges(read, actor.facilityId, monthText.parse(month)));

  it("runs an act once that touches none, and twice that touches one, which it writes down or refuses", async () => {
    const { bay, stays } = await signed(["2024-03"]);
    const open = await bay.stay("Q", "2024-05-10 08:00", "2024-05-15 08:00");
    const act = (counted: { store: Store }, options?: Asking): Act => ({
      ...bay.at(later),
      store: watchSignedMonths(counted.store, options),
    });
    const [once, refused, twice] = [1, 2, 3].map(() => counting(shared.store));
    if (!once || !refused || !twice) throw new Error("three stores are counted");
    await insert(act(once, asking), open.stayId, "2024-05-11 08:00");
    expect(once.runs()).toBe(1);
    const problem = await insert(act(refused, asking), stays[0] ?? 0, "2024-03-11 08:00").catch((error) => error);
    expect(problem).toBeInstanceOf(Problem);
    expect([problem.code, refused.runs()]).toEqual(["changes-signed-month", 2]);
    expect(await changesOf(bay.at(later), "2024-03")).toEqual([]);
    await insert(act(twice), stays[0] ?? 0, "2024-03-11 08:00");
    expect(twice.runs()).toBe(2);
    const [change] = await changesOf(bay.at(later), "2024-03");
    // By hand: in place at the censuses of the 12th and the 13th.
    expect(change?.figures).toContainEqual(
      expect.objectContaining({ ward: "A", figure: "catheter_days", before: 0, after: 2 }),
    );
  });

  it("watches a store once that is watched already, and asks", async () => {
    const { bay, stays } = await signed(["2024-03"]);
    const act = { ...bay.at(later), store: watchSignedMonths(watchSignedMonths(shared.store), asking) };
    await expect(insert(act, stays[0] ?? 0, "2024-03-11 08:00")).rejects.toMatchObject({
      code: "changes-signed-month",
    });
  });

  /** Catheters to 31 January, through February, and from 1 to 10 March, none a day without one; 35 days are allowed. */
  async function runningIntoMarch(name: string) {
    const bay = await alderBay(shared.store);
    const one = await bay.stay("P", "2024-01-25 08:00", "2024-02-29 21:00");
    const two = await bay.stay(name, "2024-03-01 05:00", "2024-03-15 08:00");
    const catheter = { kind: "indwelling-urethral", inPlaceOnArrival: false } as const;
    const from = (stayId: number, insertedAt: string, removedAt: string) =>
      insertCatheter(bay.at(later), { ...catheter, stayId, insertedAt: utc(insertedAt), removedAt: utc(removedAt) });
    const { catheterId } = await from(one.stayId, "2024-01-25 09:00", "2024-01-31 20:00");
    await from(one.stayId, "2024-02-01 06:00", "2024-02-29 20:00");
    await from(two.stayId, "2024-03-01 06:00", "2024-03-10 09:00");
    const body = { ...defaultPolicy, thresholdDays: 35 };
    await setPolicy(bay.at(later), { wardId: null, fromDay: 19_723, body, replaces: 0, reason: "Ours" });
    const month = monthText.parse("2024-03");
    const { seen } = await readMonthFigures(bay.at(later), { month });
    await signMonth(bay.at(later), { month, seen, replaces: 0, reason: null });
    return { bay, one, two, catheterId, act: { ...bay.at(later), store: watchSignedMonths(shared.store) } };
  }

  /**
   * By hand: 9 censuses, of 2 to 10 March. After the days of January and February (7 + 29) the first is eligibility day
   * 38 and all are past; after those of February alone it is day 31, and the last 4 are; by itself day 2, and none.
   */
  const past = async (act: Act) => {
    const [change] = await changesOf(act, "2024-03");
    return change?.figures.flatMap(({ ward, figure, before, after }) =>
      ward === "A" && figure === "days_past_threshold" ? [[before, after]] : [],
    );
  };

  it("sees what a catheter decides about a signed month two months later", async () => {
    const { act, catheterId } = await runningIntoMarch("P");
    await voidCatheter(act, { catheterId, reason: "Another patient's" });
    expect(await past(act)).toEqual([[9, 4]]);
  });

  it("sees what a merge decides about a month of which no day is moved", async () => {
    const { act, one, two } = await runningIntoMarch("P again");
    const { mergeId } = await mergePatients(act, { fromId: one.patientId, intoId: two.patientId });
    expect(await past(act)).toEqual([[0, 9]]);
    await unmergePatients(act, { mergeId, reason: "Two people" });
    expect(await past(act)).toEqual([[9, 0]]);
  });

  it("sees what a unit was in an earlier month", async () => {
    const { act, bay } = await runningIntoMarch("P");
    const said = { name: "A", type: null, setting: "inpatient", beds: null } as const;
    const describe = (fromDay: number, setting: "inpatient" | "outpatient") =>
      describeWard(act, { ...said, wardId: bay.a, fromDay, setting, reason: "As it was" });
    // From 1 February on as before, then 28 to 31 January otherwise.
    await describe(19_754, "inpatient");
    await describe(19_750, "outpatient");
    expect(await past(act)).toEqual([[9, 4]]);
  });

  it("sees another name of the facility", async () => {
    const { bay } = await signed(["2024-03"]);
    const act = { ...bay.at(later), store: watchSignedMonths(shared.store) };
    await changeFacility(act, { name: "Alder Bay North" });
    const [change] = await changesOf(act, "2024-03");
    expect(change?.figures).toMatchObject([{ what: "Facility", after: "Alder Bay North" }]);
  });

  it("compares the latest 24 months that one act touches, and writes down that it touches the others", async () => {
    const months = Array.from({ length: 26 }, (_, i) => {
      return `${2024 + Math.floor(i / 12)}-${String((i % 12) + 1).padStart(2, "0")}`;
    });
    const { bay, stays } = await signed(months);
    const act = { ...bay.at(later), store: watchSignedMonths(shared.store) };
    await admitPatient(act, {
      patient: { identifier: "Long" },
      number: "L",
      admittedAt: utc("2024-01-05 08:00"),
      wardId: bay.b,
    });
    expect(stays).toHaveLength(26);
    const found = await Promise.all(months.map((month) => changesOf(act, month)));
    expect(found.map((changes) => changes.map(({ figures }) => figures.length > 0))).toEqual(
      months.map((_, i) => [i >= 2]),
    );
  }, 120_000);
});
