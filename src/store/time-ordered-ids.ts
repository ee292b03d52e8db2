import { randomBytes } from "node:crypto";
import type { Instant } from "../domain/days/day-number.ts";

/** Counts within a millisecond before the next one is taken ahead of time: 12 bits. */
const mostInMillisecond = 0x1000;

/**
 * Draws ids in the order in which they are asked for: version 7 of a UUID, with a counter after its time (RFC 9562,
 * sections 5.7 and 6.2, method 1). A clock that is set back does not set them back.
 */
export function timeOrderedIds(): (now: Instant) => string {
  let time = 0;
  let count = 0;
  return (now) => {
    count = now > time ? 0 : count + 1;
    time = Math.max(now, time);
    if (count === mostInMillisecond) {
      time += 1;
      count = 0;
    }
    const bytes = randomBytes(8);
    bytes[0] = 0x80 | ((bytes[0] ?? 0) & 0x3f);
    const rest = bytes.toString("hex");
    const digits = time.toString(16).padStart(12, "0");
    const counter = count.toString(16).padStart(3, "0");
    return `${digits.slice(0, 8)}-${digits.slice(8)}-7${counter}-${rest.slice(0, 4)}-${rest.slice(4)}`;
  };
}
