import { expect, it } from "vitest";
import { month } from "../../../shared/day.ts";
import { determineWithHinges } from "../../../src/domain/criteria/index.ts";
import { timelineOf } from "../../../src/domain/criteria/story.ts";
import { determineByWard } from "../../../src/domain/cultures/determine-by-ward.ts";
import { determineInForce } from "../../../src/domain/cultures/determine-in-force.ts";
import { dayMs } from "../../../src/domain/days/day-number.ts";
import { nonDefaultWords, readingsOf } from "../../../src/domain/editions/readings.ts";
import { us2024 } from "../../../src/domain/editions/us-2024.ts";

const day = (text: string) => Date.parse(text) / dayMs;

const november = month.parse("2026-11");

it("up to and including the first birthday is an infant after the months that were signed, completed years in them", () => {
  const readOn = readingsOf([], november);
  expect(readOn(us2024, day("2026-11-30")).options.infantAge).toBe("completed-years");
  expect(readOn(us2024, day("2026-12-01")).options.infantAge).toBe("first-birthday");
  expect(readingsOf([])(us2024, day("2024-01-01")).options.infantAge).toBe("first-birthday");
  for (const text of ["2026-11-30", "2026-12-01"]) expect(nonDefaultWords("us-2024", day(text), readOn)).toEqual([]);
});

/** The same child of 14 months with vomiting, cultured on a day. */
function child(text: string) {
  const story = { ageYears: 1.2, urine: [{ day: 10, grew: [["Escherichia coli", ">100000"]] }] } as const;
  const shift = day(text) - day("2024-03-10");
  const timeline = timelineOf({ ...story, signs: [{ day: 10, sign: "vomiting" }] });
  const moved = JSON.stringify(timeline, (key, value: unknown) => {
    if (typeof value !== "number") return value;
    if (key === "at") return value + shift * dayMs;
    return /[dD]ay$|knownThrough/.test(key) ? value + shift : value;
  });
  return JSON.parse(moved) as typeof timeline;
}

it("a child of 14 months is determined by the reading of the day, and the derivation says so", () => {
  const ofDay = (text: string) => {
    const [byFamily] = determineInForce(child(text), "us", readingsOf([], november));
    const [byWard] = determineByWard(child(text), () => "us", readingsOf([], november));
    expect(byWard?.determination).toEqual(byFamily);
    return [
      byFamily?.outcome,
      byFamily?.hinges.find(({ option }) => option === "infantAge")?.otherAnswer.split(",")[0],
    ];
  };
  expect(ofDay("2026-11-20")).toEqual(["event", "definition not met"]);
  expect(ofDay("2026-12-20")).toEqual(["not-met", "SUTI 2 of 20 December 2026"]);
});

it("an event of a signed month keeps its reading when its culture is of the month after", () => {
  // The child vomits on the day before the culture, so that the event is of November.
  const timeline = child("2026-12-01");
  const signs = timeline.signs.map((one) => ({ ...one, when: { day: day("2026-11-30"), at: null } }));
  const [one] = determineByWard({ ...timeline, signs }, () => "us", readingsOf([], november));
  expect(one?.determination).toMatchObject({ outcome: "event", event: { dateOfEvent: day("2026-11-30") } });
  const [other] = determineByWard(timeline, () => "us", readingsOf([], november));
  expect(other?.determination.outcome).toBe("not-met");
});

it("a chosen reading holds from its month on, the latest one last, for its edition alone", () => {
  const readOn = readingsOf([
    { editionId: "us-2024", option: "lookedFor", value: "any-day", fromMonth: month.parse("2027-03") },
    { editionId: "us-2024", option: "lookedFor", value: "every-day", fromMonth: month.parse("2027-01") },
    { editionId: "ecdc-2017", option: "afterDeath", value: "used", fromMonth: month.parse("2027-01") },
  ]);
  const read = (text: string) => readOn(us2024, day(text)).options;
  expect(read("2026-12-31").lookedFor).toBe("any-day");
  expect(read("2027-01-01")).toMatchObject({ lookedFor: "every-day", afterDeath: "not-used" });
  expect(read("2027-03-01").lookedFor).toBe("any-day");
  expect(nonDefaultWords("us-2024", day("2027-02-01"), readOn)).toEqual([
    "When “there was no such sign” is known of a window: On every day of it",
  ]);
  expect([
    nonDefaultWords("our-own", day("2027-02-01"), readOn),
    nonDefaultWords(null, day("2027-02-01"), readOn),
  ]).toEqual([[], []]);
  expect(nonDefaultWords("us-2024", day("2027-03-01"), readOn)).toEqual([]);
  expect(readOn(us2024, day("2027-01-01"))).toBe(readOn(us2024, day("2027-02-01")));
});

it("determinations under an edition as published know no dated change", () => {
  expect(determineWithHinges(child("2026-12-20"), us2024)[0]?.outcome).toBe("event");
});
