import { expect, it } from "vitest";
import { knownWard } from "../../../src/usecases/wards/known-ward.ts";
import { alderBay } from "../../databases/alder-bay.ts";
import { onEachDatabase } from "../../databases/databases.ts";
import { faultsOf } from "../../databases/refusal.ts";
import { sharedStore } from "../../databases/shared-store.ts";

onEachDatabase("a ward that is named", (fresh) => {
  const shared = sharedStore(fresh);

  it("is known in its own facility, and refused elsewhere as one that never was", async () => {
    const bay = await alderBay(shared.store);
    const other = await alderBay(shared.store);
    const check = (wardId: number) => shared.store.tx((tx) => knownWard(tx, bay.facilityId, wardId));
    await check(bay.a);
    const [elsewhere] = await faultsOf(() => check(other.a));
    const [never] = await faultsOf(() => check(-1));
    expect(elsewhere).toMatchObject({ code: "not-found", pointer: "/wardId" });
    expect(never).toEqual(elsewhere);
  });
});
