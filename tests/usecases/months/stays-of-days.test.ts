import { expect, it } from "vitest";
import { loadCountingRules } from "../../../src/usecases/months/counting-rules.ts";
import { lastingOf, periodOf, staysOfDays } from "../../../src/usecases/months/stays-of-days.ts";
import { alderBay } from "../../databases/alder-bay.ts";
import { onEachDatabase } from "../../databases/databases.ts";
import { sharedStore } from "../../databases/shared-store.ts";
import { utc } from "../../databases/utc.ts";
import { dayOf } from "../../reference/day-text.ts";

onEachDatabase("the stays of some facility days", (fresh) => {
  const shared = sharedStore(fresh);

  it("are those that touch them, and those that begin as they end", async () => {
    const bay = await alderBay(shared.store);
    await bay.stay("P1", "2024-02-20 10:00", "2024-02-29 23:59");
    await bay.stay("P2", "2024-02-20 10:00", "2024-03-01 00:00");
    await bay.stay("P3", "2024-03-31 23:59", "2024-04-02 10:00");
    await bay.admit("P4", "2024-04-01 00:00");
    await bay.admit("P5", "2024-04-01 00:01");
    const days = { first: dayOf("2024-03-01"), last: dayOf("2024-03-31") };
    const [rules, all, onB] = await shared.store.read(async (read) => {
      const found = await loadCountingRules(read, bay.facilityId, () => days);
      const on = (wardIds?: readonly number[]) => staysOfDays(read, found, { days, wardIds });
      return [found, await on(), await on([bay.b])] as const;
    });
    expect(periodOf(rules, days)).toEqual({ start: utc("2024-03-01 00:00"), end: utc("2024-04-01 00:00") });
    expect(all.map(({ identifier }) => identifier)).toEqual(["P2", "P3", "P4"]);
    expect(lastingOf(all).map(({ identifier }) => identifier)).toEqual(["P4"]);
    expect(onB).toEqual([]);
  });
});
