import { describe, expect, it } from "vitest";
import { determine, timelineOf } from "../../../src/domain/criteria/index.ts";
import type { Story } from "../../../src/domain/criteria/story.ts";
import { mayCount } from "../../../src/domain/cultures/may-count.ts";
import { type ChosenReading, readingsOf } from "../../../src/domain/editions/readings.ts";
import { us2024 } from "../../../src/domain/editions/us-2024.ts";

const grew = [["Escherichia coli", ">100000"]] as const;
const scope = (wardId: number, fromMonth = "2024-03", toMonth: string | null = null, edition = "us-2024") =>
  ({ wardId, fromMonth, toMonth, edition }) as never;
/** Where a culture of this story could count, with these scopes. Day 1 is March 1, 2024. */
function counts(story: Story, ...scopes: never[]) {
  const timeline = timelineOf({ urine: [{ day: 10, grew }], ...story });
  const [determination] = determine(timeline, us2024);
  if (!determination) throw new Error("the story has a culture");
  const { subject, event } = determination;
  return mayCount(timeline, { subject, events: [event] }, scopes)?.map(({ wardId, month }) => `${wardId} ${month}`);
}
/** On ward 1, and on ward 2 from a day on. */
const movedOn = (day: number): Story => ({
  wards: [
    [1, 1, day],
    [2, day, null],
  ],
});

// The window and the rule of transfers: CDC Patient Safety Component Manual, chapters 2 and 7.
describe("where an event of a culture could count", () => {
  it("is nowhere when no unit is under surveillance, and where the patient was otherwise", () => {
    expect(counts({})).toEqual([]);
    expect(counts({}, scope(1))).toEqual(["1 2024-03"]);
    expect(counts({}, scope(2))).toEqual([]);
  });

  it("reaches back to the unit of the day before the first date of event, and no further", () => {
    // The window begins on day 7, and an event of day 7 belongs to the first unit of day 6.
    expect(counts(movedOn(6), scope(1))).toEqual(["1 2024-03"]);
    expect(counts(movedOn(5), scope(1))).toEqual([]);
    expect(counts(movedOn(5), scope(2))).toEqual(["2 2024-03"]);
    // Collected on ward 2 on the day of the transfer: under the United States' rule every date belongs to ward 1.
    expect(counts(movedOn(10), scope(2))).toEqual([]);
    expect(counts(movedOn(10), scope(1))).toEqual(["1 2024-03"]);
  });

  it("does not hang on the unit that collected: an outpatient area counts nothing itself", () => {
    const fromTheater: Story = {
      wards: [
        [1, 1, 10],
        [9, 10, 11, "procedure"],
        [1, 11, null],
      ],
    };
    expect(counts(fromTheater, scope(1))).toEqual(["1 2024-03"]);
    expect(counts(fromTheater, scope(9))).toEqual([]);
  });

  it("is a matter of the month of each date of event", () => {
    const early: Story = { wards: [[1, -20, null]], urine: [{ day: 2, grew }] };
    expect(counts(early, scope(1, "2024-02"))).toEqual(["1 2024-02", "1 2024-03"]);
    expect(counts(early, scope(1, "2024-03"))).toEqual(["1 2024-03"]);
    expect(counts(early, scope(1, "2024-01", "2024-02"))).toEqual(["1 2024-02"]);
    expect(counts(early, scope(1, "2024-04"))).toEqual([]);
  });

  it("follows the definitions by which the unit is under surveillance", () => {
    // ECDC dates by the first sign, up to 3 days after the culture, and belongs to the unit of that day.
    expect(counts(movedOn(12), scope(2, "2024-03", null, "ecdc-2017"))).toEqual(["2 2024-03"]);
    expect(counts(movedOn(12), scope(2))).toEqual([]);
    // An edition that is not held here is read as that of the United States, as determinations are.
    expect(counts({}, scope(1, "2024-03", null, "our-own"))).toEqual(["1 2024-03"]);
  });

  it("reaches as far as the window that the facility chose", () => {
    const timeline = timelineOf({ urine: [{ day: 10, grew }], ...movedOn(15) });
    const subject = { kind: "specimen", id: 1, day: timeline.specimens[0]?.collected.day ?? 0 } as const;
    const countsWith = (...chosen: ChosenReading[]) =>
      mayCount(timeline, { subject, events: [] }, [scope(2, "2024-03", null, "ecdc-2017")], readingsOf(chosen));
    expect(countsWith()).toEqual([]);
    const week = { editionId: "ecdc-2017", option: "windowDays", value: 7, fromMonth: "2024-03" } as const;
    expect(countsWith(week as never)).toEqual([{ wardId: 2, month: "2024-03" }]);
  });

  it("takes a unit whose setting is not known for one that could be inpatient", () => {
    expect(counts({ wards: [[1, 1, null, null]] }, scope(1))).toEqual(["1 2024-03"]);
  });

  it("cannot be said while the record names no place on a possible date", () => {
    const gone: Story = {
      wards: [
        [1, 1, 6],
        [1, 20, null],
      ],
    };
    // Back on ward 1 on day 20 only: on days 8 to 10 the stay lasts, and no one knows where.
    expect(counts(gone, scope(2))).toBeUndefined();
    expect(counts(gone, scope(1))).toEqual(["1 2024-03"]);
    // The stay is recorded and none of its units is: no scope is ruled out.
    expect(counts({ wards: [], admitted: 2 }, scope(1))).toBeUndefined();
    // After discharge there is no place to know.
    expect(counts({ wards: [[1, 1, 3]] }, scope(2))).toEqual([]);
  });

  it("stays with the unit of the event that a culture repeats", () => {
    const timeline = timelineOf({ urine: [{ day: 10, grew }] });
    const [determination] = determine(timeline, us2024);
    if (!determination) throw new Error("the story has a culture");
    const repeated = { wardId: 5, dateOfEvent: determination.subject.day - 8 } as never;
    const said = { subject: determination.subject, events: [null, repeated] };
    expect(mayCount(timeline, said, [scope(5)])).toEqual([{ wardId: 5, month: "2024-03" }]);
  });
});
