import { expect, it } from "vitest";
import { month } from "../../../shared/day.ts";
import { canonicalText } from "../../../src/domain/reports/canonical-text.ts";
import { addSignature } from "../../../src/store/signed-months.ts";
import { digestOf, readMonthFigures } from "../../../src/usecases/months/read-month-figures.ts";
import { readMonthSignatures, readSignedMonth } from "../../../src/usecases/months/read-signatures.ts";
import { alderBay } from "../../databases/alder-bay.ts";
import { onEachDatabase } from "../../databases/databases.ts";
import { sharedStore } from "../../databases/shared-store.ts";

const [march, april] = [month.parse("2024-03"), month.parse("2024-04")];
const later = "2024-05-03 08:00";

onEachDatabase("the rule of limits where a facility has chosen none", (fresh) => {
  const shared = sharedStore(fresh);

  it("is that of a signed month's own text, so that a later default is no difference from it", async () => {
    const bay = await alderBay(shared.store);
    await bay.stay("P1", "2024-03-10 08:00", "2024-03-20 08:00");
    const { report } = await readMonthFigures(bay.at(later), { month: march });
    expect(report.limits).toBe("mid-p");
    // As an earlier version signed it.
    const text = canonicalText({ ...report, limits: "mid-p-to-100" });
    const signature = { month: march, number: 1, seen: "", role: "prevention", reason: null } as const;
    await bay.store.tx((tx) => addSignature(tx, bay.by(later), { ...signature, digest: digestOf(text), text }));
    const read = await readMonthSignatures(bay.at(later), { month: march });
    expect([read.signatures.length, read.differences]).toEqual([1, []]);
    expect((await readMonthFigures(bay.at(later), { month: march })).report.limits).toBe("mid-p-to-100");
    expect((await readMonthFigures(bay.at(later), { month: april })).report.limits).toBe("mid-p");
    const signed = await readSignedMonth(bay.at(later), { month: march, number: 1 });
    expect(signed.report.limits).toBe("mid-p-to-100");
  });
});
