import type { DayNumber } from "../domain/days/day-number.ts";
import type { Course } from "./course.ts";
import type { Draw } from "./draw.ts";

/** Of so many patients nobody recorded it: rules that ask for the age then say what to look up. Invented. */
const missingShare = 0.02;
/** Of this scene it is never known: it shows an answer that is the same at any age. */
const ageless = "SX-present-on-admission";

/**
 * The courses with a sex, and a birth day for nearly every patient. Alder Bay has no wards for children: everybody is from 18 to 97
 * years old, half of them over about 66. Invented.
 */
export function withBirthDays(draw: Draw, courses: readonly Course[], today: DayNumber): Course[] {
  return courses.map((course) => {
    const isMissing = draw.chance(missingShare) || course.stay === ageless;
    const years = 18 + 79 * Math.max(draw.fraction(), draw.fraction() ** 1.6);
    const sex = draw.chance(0.5) ? "female" : "male";
    const bornOn = today - Math.round(years * 365.2425);
    return { ...course, bornOn: isMissing ? null : bornOn, sex };
  });
}
