import { expect, it } from "vitest";
import type { RecordedSign } from "../../../src/domain/cultures/sign.ts";
import { dayMs } from "../../../src/domain/days/day-number.ts";
import { monthsTouched } from "../../../src/domain/intake/months-touched.ts";
import type { CatheterNote } from "../../../src/domain/timeline/note.ts";
import { timelineOf } from "../timeline/written.ts";

const dayOf = (at: number) => Math.floor(at / dayMs);
const day = (text: string) => dayOf(Date.parse(text));
const none = { changes: [], notes: [], cultures: { specimens: [], signs: [] } };
const today = day("2024-06-10");

it("lists the months of new and changed entries, of an open stay up to today", () => {
  const at = (text: string) => Date.parse(`${text}T08:00:00Z`);
  const stay = `stay 1: ${at("2024-04-20")}-`;
  const after = timelineOf(stay, `ward stay 2: A ${at("2024-04-20")}-`);
  const changes = [{ before: { patientId: 1, stays: [] }, after }];
  expect(monthsTouched({ ...none, changes }, { dayOf, today })).toEqual(["2024-04", "2024-05", "2024-06"]);
  expect(monthsTouched({ ...none, changes: [{ before: after, after }] }, { dayOf, today })).toEqual([]);
});

it("lists the month of a note, and for a sign also that of an event three days earlier", () => {
  const notes = [
    { old: { at: Date.parse("2024-02-03") } as CatheterNote, now: { at: Date.parse("2024-03-03") } as CatheterNote },
  ];
  expect(monthsTouched({ ...none, notes }, { dayOf, today })).toEqual(["2024-02", "2024-03"]);
  const signs = [{ old: null, now: { day: day("2024-05-03") } as RecordedSign }];
  const cultures = { specimens: [], signs };
  expect(monthsTouched({ ...none, cultures }, { dayOf, today })).toEqual(["2024-04", "2024-05"]);
});
