import { expect, it } from "vitest";
import { facilityTime } from "../../../src/web/parts/facility-time.ts";
import { entryTime } from "../../../src/web/texts/entry-time.ts";

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
