import { expect, it } from "vitest";
import type { RecordedSpecimen } from "../../../src/domain/cultures/specimen.ts";
import { addEffects, effectsOf, noEffects, withNewWards } from "../../../src/domain/intake/effects.ts";
import type { CatheterNote } from "../../../src/domain/timeline/note.ts";
import { newEntry, type Stay } from "../../../src/domain/timeline/timeline.ts";

const stay = (id: number, more: Partial<Stay> = {}): Stay => ({
  ...{ ...newEntry, id, patientId: 1, number: `S${id}`, admittedAt: 0, dischargedAt: null, disposition: null },
  ...{ spanFromMoves: false, wardStays: [], catheters: [], ...more },
});
const move = (id: number, endAt: number | null = null) => ({
  ...{ ...newEntry, id, wardId: 3, bed: null, startAt: 0, endAt, absenceAfter: null },
});
const timeline = (...stays: Stay[]) => ({ patientId: 1, stays });
const note = {} as CatheterNote;

it("entries that lines make are new, those that say something else are changed, and others are neither", () => {
  const before = timeline(stay(1, { wardStays: [move(10), move(11)] }), stay(2));
  const after = timeline(
    stay(1, { wardStays: [move(10, 5), move(11), move(12)] }),
    stay(2, { dischargedAt: 9 }),
    stay(3, { wardStays: [move(13)] }),
  );
  const effects = effectsOf({
    changes: [{ before, after }],
    notes: [
      { old: null, now: note },
      { old: note, now: note },
      { old: note, now: note },
    ],
    cultures: { specimens: [{ old: null, now: {} as RecordedSpecimen }], signs: [] },
  });
  expect(effects).toEqual({
    wards: { added: 0, changed: 0 },
    // The first stay holds other moves, and says itself what it said.
    stays: { added: 1, changed: 1 },
    moves: { added: 2, changed: 1 },
    catheters: { added: 0, changed: 0 },
    reviews: { added: 1, changed: 2 },
    specimens: { added: 1, changed: 0 },
    signs: { added: 0, changed: 0 },
  });
  expect(addEffects(effects, effects).moves).toEqual({ added: 4, changed: 2 });
  expect(
    effectsOf({ changes: [{ before, after: before }], notes: [], cultures: { specimens: [], signs: [] } }),
  ).toEqual(noEffects);
  expect(withNewWards(effects, new Set(["A", "B"])).wards).toEqual({ added: 2, changed: 0 });
});
