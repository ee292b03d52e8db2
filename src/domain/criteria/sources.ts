import { type DayNumber, dayMs } from "../days/day-number.ts";
import type { Source } from "./rule.ts";

const taiwan = "the national adaptation of Taiwan, c. 2017-2018";

/** CDC Patient Safety Component Manual, chapter 7 (urinary tract infection). */
export const chapter7: Source = {
  document: "CDC Patient Safety Component Manual, chapter 7 (urinary tract infection), January 2024",
  basis: "read",
  readIn: taiwan,
};
export const chapter7FromMemory: Source = { document: chapter7.document, basis: "from memory" };
/** CDC Patient Safety Component Manual, chapter 2 (identifying infections). */
export const chapter2: Source = {
  document: "CDC Patient Safety Component Manual, chapter 2 (identifying infections), January 2024",
  basis: "read",
  readIn: "CDC, frequently asked questions on identifying infections",
};
export const chapter2FromMemory: Source = { document: chapter2.document, basis: "from memory" };
export const urineQuestions: Source = {
  document: "CDC, frequently asked questions on urinary tract infection",
  basis: "read",
};
/** The ECDC's definitions; the older CDC/RKI criterion D1 has the same text. */
export const ecdcD1: Source = {
  document: "ECDC HAI-Net ICU protocol 2.2 (2017), UTI-A and UTI-B",
  basis: "read",
  readIn: "the older CDC/RKI criterion D1, which has the same text",
};
export const ecdcSurvey: Source = {
  document: "ECDC point prevalence survey protocol 5.3 (2016), definition of a healthcare-associated infection",
  basis: "read",
};
export const ecdcFromMemory: Source = { document: "ECDC HAI-Net ICU protocol 2.2 (2017)", basis: "from memory" };
export const ourReading = (what: string): Source => ({ document: what, basis: "our reading" });

const firstOfYear = (year: number): DayNumber => Date.UTC(year, 0, 1) / dayMs;

/**
 * Rules of the United States have had this form since January 2015 (fungi and counts below 100,000 dropped: IDWeek 2016,
 * abstract 401); the wording taken here is that of January 2024.
 */
export const sinceUs2024 = { from: firstOfYear(2024), to: null } as const;
/** The European protocols of 2017. */
export const sinceEcdc2017 = { from: firstOfYear(2017), to: null } as const;
