import { expect, it } from "vitest";
import { facilityTime } from "../../../src/web/parts/facility-time.ts";
import { entryCharted, entryTime } from "../../../src/web/texts/entry-time.ts";

it("shows a time with its hour, and as its day where the hour is not recorded", () => {
  const time = facilityTime("America/New_York");
  const at = Date.UTC(2026, 2, 8, 5) + 1;
  const entry = { noHour: ["removedAt"] };
  expect(entryTime(time, entry, "removedAt")(at)).toBe("Mar 8, hour not recorded");
  expect([entryTime(time, entry, "insertedAt")(at), entryTime(time, {}, "removedAt")(at)]).toEqual([
    "Mar 8, 00:00",
    "Mar 8, 00:00",
  ]);
});

it("gives a form the day alone where the hour is not recorded", () => {
  const time = facilityTime("America/New_York");
  const at = Date.UTC(2026, 2, 8, 5) + 1;
  const charted = (field: string, when: number | null) => entryCharted(time, { noHour: ["removedAt"] }, field)(when);
  expect([charted("removedAt", at), charted("insertedAt", at), charted("removedAt", null)]).toEqual([
    "2026-03-08",
    "2026-03-08T00:00",
    "",
  ]);
});
