import { expect, it } from "vitest";
import { signName } from "../../../shared/culture-words.ts";
import { timelineOf } from "../../../src/domain/criteria/index.ts";
import { matchOrganism } from "../../../src/domain/criteria/match-organism.ts";
import { dayOf } from "../../reference/day-text.ts";

const march = (day: number) => dayOf(`2024-03-${String(day).padStart(2, "0")}`);
const at = (day: number, hour: number) => ({ day: march(day), at: Date.UTC(2024, 2, day, hour) });
const on = (day: number) => ({ day: march(day), at: null });

it("a story that tells nothing is an adult who has been on an inpatient ward since day 1", () => {
  const { birthDay, ...rest } = timelineOf({});
  expect(rest).toEqual({
    knownThrough: march(1) + 59,
    deathDay: null,
    donorSupportFrom: null,
    stays: [
      {
        id: 1,
        admissionDay: march(1),
        wardTimes: [{ wardId: 1, setting: "inpatient", start: at(1, 8), end: null }],
        dischargeDay: null,
      },
    ],
    catheters: [],
    specimens: [],
    signs: [],
    findings: [],
  });
  // Some weeks past the birthday, so that no age turns within a story's months.
  expect([birthDay, timelineOf({ ageYears: 1 }).birthDay]).toEqual([dayOf("1970-01-30"), dayOf("2023-01-30")]);
  expect(timelineOf({ ageYears: null }).birthDay).toBeNull();
});

it("days of death, of donor support and of the question are told as they are", () => {
  expect(timelineOf({ died: 5, donorSupportFrom: 4, knownThrough: 9 })).toMatchObject({
    deathDay: march(5),
    donorSupportFrom: march(4),
    knownThrough: march(9),
  });
});

it("admits before the first unit, and without any, where that is told", () => {
  const admissionsOf = (story: Parameters<typeof timelineOf>[0]) =>
    timelineOf(story).stays.map(({ admissionDay, wardTimes }) => [admissionDay, wardTimes.length]);
  expect(admissionsOf({ admitted: -2 })).toEqual([[march(1) - 3, 1]]);
  expect(admissionsOf({ wards: [], admitted: 4 })).toEqual([[march(4), 0]]);
});

it("parts stays where new ones begin, gives each move its own hour, and discharges who left", () => {
  const story = {
    wards: [
      [1, 1, 3],
      [2, 3, 5, "outpatient"],
      [3, 7, 9, null],
    ],
    newStayAt: [2],
  } as const;
  expect(timelineOf(story).stays).toEqual([
    {
      id: 1,
      admissionDay: march(1),
      wardTimes: [
        { wardId: 1, setting: "inpatient", start: at(1, 8), end: at(3, 9) },
        { wardId: 2, setting: "outpatient", start: at(3, 9), end: at(5, 10) },
      ],
      dischargeDay: march(5),
    },
    {
      id: 2,
      admissionDay: march(7),
      wardTimes: [{ wardId: 3, setting: null, start: at(7, 8), end: at(9, 9) }],
      dischargeDay: march(9),
    },
  ]);
  expect(timelineOf({ ...story, discharged: false }).stays.map(({ dischargeDay }) => dischargeDay)).toEqual([
    null,
    null,
  ]);
});

it("puts catheters in at nine and takes them out at noon; the doubt is of the last", () => {
  const catheters = [
    [2, 4],
    [null, 6, "suprapubic"],
    [7, null],
  ] as const;
  const told = [
    { id: 1, kind: "indwelling-urethral", start: at(2, 9), end: at(4, 12), latestEndDay: null },
    { id: 2, kind: "suprapubic", start: null, end: at(6, 12), latestEndDay: null },
    { id: 3, kind: "indwelling-urethral", start: at(7, 9), end: null, latestEndDay: null },
  ];
  expect(timelineOf({ catheters }).catheters).toEqual(told);
  expect(timelineOf({ catheters: catheters.slice(0, 2), latestRemoval: 8 }).catheters).toEqual([
    told[0],
    { ...told[1], latestEndDay: march(8) },
  ]);
});

it("numbers specimens by kind and organisms by specimen", () => {
  const { specimens } = timelineOf({
    urine: [
      { day: 4 },
      {
        day: 5,
        grew: [
          ["E. coli", "10^5"],
          ["Novelia", null],
        ],
        status: "corrected",
      },
    ],
    blood: [{ day: 6, method: "screening" }, { day: 7 }],
  });
  const plain = { method: "culture", status: "final", organisms: [] };
  expect(specimens).toEqual([
    { ...plain, id: 1, kind: "urine", collected: at(4, 10) },
    {
      ...plain,
      id: 2,
      kind: "urine",
      collected: at(5, 10),
      status: "corrected",
      organisms: [
        { id: 20, name: "E. coli", identity: matchOrganism("E. coli"), count: { kind: "number", cfuPerMl: 100_000 } },
        { id: 21, name: "Novelia", identity: { key: "Novelia", group: null, genus: null }, count: { kind: "missing" } },
      ],
    },
    { ...plain, id: 101, kind: "blood", collected: at(6, 10), method: "screening" },
    { ...plain, id: 102, kind: "blood", collected: at(7, 10) },
  ]);
});

it("tells signs as they are, and all that nobody found on the days of urine", () => {
  const story = {
    urine: [{ day: 4 }],
    findings: [
      [6, "pyuria"],
      [7, "gram-stain"],
    ],
    signs: [
      { day: 3, sign: "38.4", hour: 5 },
      { day: 4, sign: "dysuria", finding: "not-recorded", otherCause: true },
    ],
  } as const;
  const told = [
    {
      id: 1,
      sign: "temperature",
      when: at(3, 5),
      finding: "present",
      temperature: { hundredths: 3840, unit: "C" },
      otherCause: false,
      review: null,
    },
    { id: 2, sign: "dysuria", when: on(4), finding: "not-recorded", temperature: null, otherCause: true, review: null },
  ];
  const absent = [4, 6, 7].flatMap((day) => signName.options.map((sign) => ({ sign, when: on(day) })));
  const plain = { finding: "absent", temperature: null, otherCause: false, review: null };
  const { signs, findings } = timelineOf(story);
  expect(signs).toEqual([...told, ...absent.map((one, i) => ({ ...plain, ...one, id: 1001 + i }))]);
  expect(timelineOf({ ...story, lookedFor: false }).signs).toEqual(told);
  expect(findings).toEqual([
    { id: 1, finding: "pyuria", when: on(6), present: true, cellsPerMm3: null },
    { id: 2, finding: "gram-stain", when: on(7), present: true, cellsPerMm3: null },
  ]);
});
