import { z } from "zod";
import { remark } from "./records.ts";

/** An instant as text: UTC with its offset, such as `2026-11-25T14:05:00.000Z`. */
export const instantText = z.iso.datetime({ offset: true, error: "write the time in UTC, as YYYY-MM-DDTHH:MM:SSZ" });

/** The largest number that an id can have; both databases keep ids in 32 bits. */
const largestId = 2_147_483_647;

/** The number of a record. */
export const id = z.int().min(1).max(largestId);

const idMessage = "write the number of the record, in digits";

/** The number of a record as it stands in an address. */
export const idInPath = z
  .codec(z.string().regex(/^[1-9]\d{0,9}$/, idMessage), z.int().max(largestId, idMessage), {
    decode: (text) => Number(text),
    encode: (number) => String(number),
  })
  // In the published description it is the whole number that it is, not the text that carries it.
  .meta({ type: "integer", minimum: 1, maximum: largestId, pattern: undefined });

/**
 * A time as somebody charts it: with an offset it is that instant, without one the local time of the facility.
 * A local time that occurs twice is read as the earlier instant and marked; one that does not exist is refused.
 */
export const timeText = z
  .string()
  .max(40, "write the time as YYYY-MM-DDTHH:MM")
  .describe("YYYY-MM-DDTHH:MM, local to the facility, or with seconds and an offset");

/** The time of a correction: as {@link timeText}, or a day alone where the hour is not recorded. */
export const timeOrDayText = timeText.describe(
  "YYYY-MM-DDTHH:MM, local to the facility, or with seconds and an offset; YYYY-MM-DD where the hour is not recorded",
);

/** An instant in answers: UTC milliseconds here, text on the wire. */
export const instant = z
  .codec(instantText, z.number(), {
    decode: (text) => Date.parse(text),
    encode: (at) => new Date(at).toISOString(),
  })
  .meta({ type: "string", format: "date-time" });

/** A short text on one line, such as a bed, that somebody typed or a system gave. */
export function lineText(longest: number) {
  return z
    .string()
    .trim()
    .min(1, "write at least one character, or leave the field out")
    .max(longest, `shorten the text to ${longest} characters`)
    .refine((text) => !/[\p{Cc}\p{Cs}]/u.test(text), "leave out line breaks and invisible characters");
}

/** Why something is corrected, voided or undone. */
export const reason = remark.describe("Why; kept with the record");

/** The version of an entry: send it as If-Match with the next change. */
export const version = z.int().min(1).describe("Send it as If-Match with the next change");
