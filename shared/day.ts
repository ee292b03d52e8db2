import { z } from "zod";

/** A facility day as text, `YYYY-MM-DD`: a local calendar date without a time or an offset. */
export const day = z.iso.date("write the day as YYYY-MM-DD").brand<"Day">();
export type Day = z.infer<typeof day>;

/** A calendar month as text, `YYYY-MM`. */
export const month = z
  .string()
  .regex(/^\d{4}-(0[1-9]|1[0-2])$/, "write the month as YYYY-MM")
  .brand<"Month">();
export type Month = z.infer<typeof month>;

/**
 * The local time of the daily census, `HH:MM`. `00:00` belongs to the day that begins,
 * `24:00` to the day that ends; hospitals use both.
 */
export const censusTime = z
  .string()
  .regex(/^(([01]\d|2[0-3]):[0-5]\d|24:00)$/, "write the census time as HH:MM, from 00:00 to 24:00")
  .brand<"CensusTime">();
export type CensusTime = z.infer<typeof censusTime>;
