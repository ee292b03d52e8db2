import { afterAll, beforeAll, expect, it } from "vitest";
import { endpoints } from "../../shared/api/index.ts";
import type { FigureChange } from "../../shared/signed-changes.ts";
import { monthDifferences } from "../../src/domain/reports/month-differences.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { actsAfterSigning, type Done, october, readyToSign } from "./acts-without-days.ts";
import { lookedAt } from "./alder-bay.ts";
import { type Desk, openDesk } from "./desk.ts";

const { readMonthFigures, readMonthSignatures, signMonth } = endpoints;

/** A unit that is added has another number each time it is tried. */
const unnumbered = (figures: readonly FigureChange[]) => figures.map(({ wardId: _, ...figure }) => figure);

onEachDatabase("an act that moves no patient", (fresh) => {
  let desk: Desk;
  beforeAll(async () => {
    desk = await openDesk(await fresh());
  });
  afterAll(() => desk?.close());

  const report = async () => (await desk.ask(readMonthFigures, { month: october })).report;
  const changes = async () => (await desk.ask(readMonthSignatures, { month: october })).changes;

  it("is refused with figures before and after where a signed figure changes, and listed once it was acknowledged", {
    timeout: 300_000,
  }, async () => {
    const acts = actsAfterSigning(desk, await readyToSign(desk));
    const { seen } = await desk.ask(readMonthFigures, { month: october });
    await desk.ask(signMonth, { month: october, seen, replaces: 0, reason: null });
    const done: Done = { wardId: 0, mergeId: 0 };
    for (const next of acts) {
      const { title, act, changes: changed, entry } = next(done);
      const [before, listed] = [await report(), await changes()];
      const refused = changed ? await desk.refused(...act) : null;
      if (refused) expect([title, refused.code]).toEqual([title, "changes-signed-month"]);
      const answer = desk.ask(...act, changed ? { acknowledge: true } : {});
      await expect(answer, title).resolves.toBeTruthy();
      Object.assign(done, await answer);
      const differences = monthDifferences(before, await report());
      const told = differences.map(({ signed, now, ...of }) => ({ ...of, before: signed, after: now }));
      const warned = refused?.signed?.months.map(({ month, figures }) => ({ month, figures: unnumbered(figures) }));
      expect([title, warned ?? []]).toEqual([
        title,
        told.length === 0 ? [] : [{ month: october, figures: unnumbered(told) }],
      ]);
      const added = (await changes()).slice(0, -listed.length || undefined);
      expect([title, added.map((one) => one.figures)]).toEqual([title, told.length === 0 ? [] : [told]]);
      if (!changed) continue;
      const [ward, what, was, is] = changed;
      expect([title, told]).toEqual([
        title,
        expect.arrayContaining([expect.objectContaining({ ward, what, before: was, after: is })]),
      ]);
      const by = desk.hospital.people.prevention;
      expect([title, added[0]]).toMatchObject([title, { by, at: lookedAt, number: 1, isOpen: true }]);
      if (entry !== undefined) expect([title, added[0]?.entry]).toEqual([title, entry]);
    }
  });
});
