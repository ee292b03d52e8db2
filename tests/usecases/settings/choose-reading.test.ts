import { expect, it } from "vitest";
import type { Month } from "../../../shared/day.ts";
import { type ChooseReading, chooseReading, listReadings } from "../../../src/usecases/settings/choose-reading.ts";
import { type AlderBay, alderBay } from "../../databases/alder-bay.ts";
import { onEachDatabase } from "../../databases/databases.ts";
import { auditOf } from "../../databases/read-back.ts";
import { refusalOf } from "../../databases/refusal.ts";
import { sharedStore } from "../../databases/shared-store.ts";

const now = "2024-03-20 10:00";
const asked: ChooseReading = {
  ...{ editionId: "us-2024", option: "lookedFor", value: "every-day", reason: "our committee decided" },
  fromMonth: "2024-04" as Month,
};

onEachDatabase("choosing a reading", (fresh) => {
  const shared = sharedStore(fresh);
  const choose = (bay: AlderBay, more: Partial<ChooseReading> = {}) =>
    chooseReading(bay.at(now), { ...asked, ...more });
  const chosen = async (bay: AlderBay) => (await listReadings(bay.at(now), { editionId: "us-2024" })).chosen;

  it("is kept with who and why, for its own facility and edition, and audited", async () => {
    const [bay, other] = [await alderBay(shared.store), await alderBay(shared.store)];
    await choose(bay);
    expect(await chosen(bay)).toEqual([
      {
        ...{ option: "lookedFor", value: "every-day", fromMonth: "2024-04", reason: asked.reason },
        point: "When “there was no such sign” is known of a window",
        reading: "On every day of it",
        ...{ recordedAt: bay.at(now).now, recordedBy: bay.personId },
      },
    ]);
    expect(await chosen(other)).toEqual([]);
    expect((await listReadings(bay.at(now), { editionId: "ecdc-2017" })).chosen).toEqual([]);
    expect(await auditOf(shared.store, bay.facilityId, bay.at(now).now)).toMatchObject([{ action: "choose-reading" }]);
  });

  it.each<[string, Partial<ChooseReading>, string, string]>([
    ["a past month", { fromMonth: "2024-02" as Month }, "reading-not-to-come", "/fromMonth"],
    ["the present month", { fromMonth: "2024-03" as Month }, "reading-not-to-come", "/fromMonth"],
    ["an unknown point", { option: "nothing" }, "unknown-reading", "/option"],
    ["an option that is no open point", { option: "windowDays", value: 4 }, "unknown-reading", "/option"],
    ["an unknown reading", { value: "sometimes" }, "unknown-reading", "/value"],
    ["a reading of another kind", { value: true }, "unknown-reading", "/value"],
  ])("%s is refused and nothing is stored", async (_title, more, code, pointer) => {
    const bay = await alderBay(shared.store);
    expect(await refusalOf(shared.store, () => choose(bay, more))).toMatchObject({ code, pointer });
    expect(await chosen(bay)).toEqual([]);
  });

  it("twice from one month is refused; a later month takes it back", async () => {
    const bay = await alderBay(shared.store);
    await choose(bay);
    expect(await refusalOf(shared.store, () => choose(bay, { value: "any-day" }))).toMatchObject({
      code: "reading-chosen-already",
    });
    await choose(bay, { value: "any-day", fromMonth: "2024-06" as Month });
    expect((await chosen(bay)).map(({ value }) => value)).toEqual(["every-day", "any-day"]);
  });
});
