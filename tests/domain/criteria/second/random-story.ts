import fc from "fast-check";
import { type SignName, signName } from "../../../../shared/culture-words.ts";
import type { Story, StorySign, StorySpecimen } from "../../../../src/domain/criteria/story.ts";
import { counts, organisms } from "./grown.ts";

const name = fc.constantFrom(...Object.keys(organisms));
const count = fc.constantFrom(...Object.keys(counts));
const often = <T>(usual: T, weight: number, ...rare: T[]) =>
  fc.oneof({ weight, arbitrary: fc.constant(usual) }, { weight: 1, arbitrary: fc.constantFrom(...rare) });

const grown = fc.oneof(
  { weight: 6, arbitrary: fc.constant([["Escherichia coli", ">100000"]] as [string, string][]) },
  { weight: 4, arbitrary: fc.array(fc.tuple(name, count), { maxLength: 3 }) },
);
const status = often<NonNullable<StorySpecimen["status"]>>(
  "final",
  12,
  "pending",
  "preliminary",
  "corrected",
  "withdrawn",
);
const method = often<NonNullable<StorySpecimen["method"]>>(
  "culture",
  15,
  "screening",
  "non-culture-test",
  "catheter-tip",
);
const day = fc.oneof(
  { weight: 3, arbitrary: fc.integer({ min: 6, max: 16 }) },
  { weight: 2, arbitrary: fc.integer({ min: 0, max: 34 }) },
);

const specimen: fc.Arbitrary<StorySpecimen> = fc.record({ day, grew: grown, status, method });

const signWord = fc.constantFrom<StorySign["sign"]>(
  "37.0",
  "38.0",
  "38.4",
  "39.1",
  "35.8",
  "100.4 F",
  "100.5 F",
  "96.7 F",
  "98.6",
  "temperature",
  "suprapubic-tenderness",
  "costovertebral-pain",
  "urgency",
  "frequency",
  "dysuria",
  "apnea",
  "vomiting",
  "chills",
  "hypotension",
);
/** The chart of some days was read on one of them or later, or too early for some of them. */
const review = fc
  .record({
    first: fc.integer({ min: 2, max: 14 }),
    days: fc.integer({ min: 0, max: 12 }),
    read: fc.integer({ min: -3, max: 8 }),
    names: fc.oneof(
      { weight: 4, arbitrary: fc.constant<SignName[]>([...signName.options]) },
      { weight: 1, arbitrary: fc.subarray<SignName>([...signName.options], { minLength: 1 }) },
    ),
  })
  .map(({ first, days, read, names }) =>
    names.map((name): StorySign => {
      const through = first + days;
      return { day: first, sign: name, finding: "not-documented", through, read: Math.max(first, through + read) };
    }),
  );

const sign: fc.Arbitrary<StorySign> = fc
  .record({
    day,
    sign: signWord,
    hour: fc.option(fc.constantFrom(3, 8, 10, 13, 20), { nil: undefined, freq: 2 }),
    finding: often<NonNullable<StorySign["finding"]>>("present", 5, "absent", "not-recorded"),
    otherCause: often(false, 4, true),
  })
  .map(({ hour, ...rest }) => (hour === undefined ? rest : { ...rest, hour }));

/** Ward times of one stay after another: length of each, time off before it, its setting, and where stays part. */
const wards = fc
  .array(
    fc.record({
      ward: fc.integer({ min: 1, max: 3 }),
      days: fc.integer({ min: 0, max: 12 }),
      off: often(0, 5, 1, 2, 3),
      setting: often<"inpatient" | "outpatient" | null>("inpatient", 12, "outpatient", null),
      isNewStay: often(false, 3, true),
    }),
    { minLength: 1, maxLength: 5 },
  )
  .chain((parts) =>
    fc.record({ parts: fc.constant(parts), first: fc.integer({ min: 1, max: 6 }), isStill: often(true, 2, false) }),
  )
  .map(({ parts, first, isStill }) => {
    let from = first;
    const newStayAt: number[] = [];
    const list = parts.map(({ ward, days, off, setting, isNewStay }, i) => {
      if (i > 0 && isNewStay) newStayAt.push(i);
      from += i > 0 ? off : 0;
      const to = from + days;
      const told = [ward, from, isStill && i === parts.length - 1 ? null : to, setting] as const;
      from = to;
      return told;
    });
    return { wards: list, newStayAt };
  });

const catheter = fc
  .record({
    from: fc.option(fc.integer({ min: 0, max: 25 }), { nil: null, freq: 8 }),
    days: fc.integer({ min: -1, max: 14 }),
    isStill: often(false, 4, true),
    kind: often<"indwelling-urethral" | "suprapubic">("indwelling-urethral", 8, "suprapubic"),
  })
  .map(({ from, days, isStill, kind }) => [from, isStill ? null : (from ?? 1) + days, kind] as const);

/** A patient with all that a record can hold or lack. */
export const randomStory: fc.Arbitrary<Story> = fc
  .record({
    ageYears: fc.oneof(
      { weight: 10, arbitrary: fc.constantFrom(0, 1, 2, 40, 65, 66, 80) },
      { weight: 1, arbitrary: fc.constant(null) },
    ),
    stays: wards,
    catheters: fc.oneof(
      { weight: 2, arbitrary: fc.constant([[3, null, "indwelling-urethral"]] as const) },
      { weight: 3, arbitrary: fc.array(catheter, { maxLength: 3 }) },
    ),
    doubt: often<number | undefined>(undefined, 6, 1, 2, 4),
    removedBetween: often<readonly [number, number] | undefined>(undefined, 3, [0, 24], [7, 11], [12, 18]),
    insertedWithoutHour: often(false, 6, true),
    onThatDay: often<StorySign["sign"] | undefined>(undefined, 1, "urgency", "frequency", "dysuria"),
    hourOfIt: fc.constantFrom(3, 8, 10, 13, 20),
    urine: fc.array(specimen, { minLength: 1, maxLength: 3 }),
    blood: fc.array(specimen, { maxLength: 3 }),
    signs: fc.array(sign, { maxLength: 6 }),
    reviews: fc.array(review, { maxLength: 2 }),
    lookedFor: often(true, 2, false),
    died: often<number | undefined>(undefined, 10, 12, 20),
    donorSupportFrom: often<number | undefined>(undefined, 15, 10),
    knownThrough: often(60, 5, 15, 25),
  })
  .map(({ stays, doubt, catheters, removedBetween, onThatDay, hourOfIt, ...rest }): Story => {
    const { died, donorSupportFrom, signs, reviews, ...plain } = rest;
    const [lastStart, lastEnd] = catheters.at(-1) ?? [];
    // A symptom of the very day whose hour is not known: by chance alone it is rare.
    const thatDay = removedBetween ? lastEnd : rest.insertedWithoutHour ? lastStart : null;
    const symptom = onThatDay && typeof thatDay === "number" ? [{ day: thatDay, sign: onThatDay, hour: hourOfIt }] : [];
    return {
      ...plain,
      ...stays,
      catheters,
      signs: [...signs, ...symptom, ...reviews.flat()],
      ...(doubt !== undefined && typeof lastEnd === "number" ? { latestRemoval: lastEnd + doubt } : {}),
      ...(removedBetween === undefined ? {} : { removedBetween }),
      ...(died === undefined ? {} : { died }),
      ...(donorSupportFrom === undefined ? {} : { donorSupportFrom }),
    };
  });
