import { expect, it } from "vitest";
import { countWaiting, lastSeal, sealedEntries, sealHash, waitingEntries } from "../../src/store/audit-seal.ts";
import { sealAudit } from "../../src/usecases/audit/seal-audit.ts";
import { alderBay } from "../databases/alder-bay.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { sharedStore } from "../databases/shared-store.ts";
import { utc } from "../databases/utc.ts";

/**
 * By sha256sum of coreutils over `[1,"","018e…01","2026-11-25T14:05:00.123Z",7,3,"admit-patient","{\"stayId\":12}",[4,9,30]]`
 * and, with the first hash in it, `[2,"97e0…","018e…02","2026-11-25T14:05:01.000Z",null,3,"import","{}",[]]`.
 */
const first = "97e02155a1c93cc11efb9e46261a9e33ececf71fe06751dcd5d20e9f2b214395";
const second = "39a3453bd91cdb54fb63f01ca06a219cc28190d901cf2574c729f74979a489ad";

it("a seal is the SHA-256 of the link before and all that the entry says, so that others can check it too", () => {
  const one = {
    ...{ id: "018e0000-0000-7000-8000-000000000001", at: new Date("2026-11-25T14:05:00.123Z"), facilityId: 7 },
    ...{ personId: 3, action: "admit-patient", details: '{"stayId":12}', patientIds: [30, 4, 9] },
  };
  expect(sealHash(null, one)).toBe(first);
  const two = {
    ...{ id: "018e0000-0000-7000-8000-000000000002", at: new Date("2026-11-25T14:05:01.000Z"), facilityId: null },
    ...{ personId: 3, action: "import", details: "{}", patientIds: [] },
  };
  expect(sealHash({ number: 1, hash: first }, two)).toBe(second);
});

onEachDatabase("entries to seal", (fresh) => {
  const shared = sharedStore(fresh);

  it("are read as they were written, in order, so many at a time", async () => {
    const { store } = shared;
    expect(await store.read(lastSeal)).toBeNull();
    const bay = await alderBay(store);
    const { patientId, stayId, wardStayId } = await bay.admit("P1", "2024-03-01 10:00:00.123");
    const waiting = await store.read((read) => waitingEntries(read, 100));
    expect(await store.read(countWaiting)).toBe(waiting.length);
    expect(waiting.map(({ id }) => id)).toEqual(waiting.map(({ id }) => id).toSorted());
    expect(await store.read((read) => waitingEntries(read, 2))).toEqual(waiting.slice(0, 2));
    const { id: _, details = "", ...last } = waiting.at(-1) ?? {};
    expect(last).toMatchObject({
      ...{ at: new Date(utc("2024-03-01 10:00:00.123")), facilityId: bay.facilityId, personId: bay.personId },
      ...{ action: "admit-patient", patientIds: [patientId] },
    });
    expect(JSON.parse(details)).toMatchObject({ wardId: bay.a, stayId, wardStayId });

    await sealAudit(store);
    const sealed = await store.read((read) => sealedEntries(read, 0, 100));
    expect(sealed.map(({ id }) => id)).toEqual(waiting.map(({ id }) => id));
    expect(await store.read((read) => sealedEntries(read, 1, 2))).toEqual(sealed.slice(1, 3));
    expect(await store.read(lastSeal)).toEqual(sealed.at(-1)?.seal);
    expect(await store.read(countWaiting)).toBe(0);
  });
});
