import type { Story } from "../../../../src/domain/criteria/story.ts";

/** Days of evidence, and the stay that they belong to. */
interface Days {
  readonly from: number;
  readonly to: number;
  readonly isOver: boolean;
  /** The last day of the stay. */
  readonly last: number;
}

/** Whether fewer than half of the days on which a fever would count have a temperature; none while such days may still come. */
export function hasFewTemperatures(story: Story, { from, to, isOver, last }: Days): boolean {
  const { knownThrough = 60, died = 99 } = story;
  const end = Math.min(to, died, isOver ? last + 1 : to);
  if (knownThrough < end || from > end) return false;
  let measured = 0;
  for (let day = from; day <= end; day++) if (isMeasured(story, day)) measured += 1;
  return measured < (end - from + 1) / 2;
}

/** Measured, or looked for without a fever, as on each day of a specimen or finding where all was looked for. */
function isMeasured({ signs = [], urine = [], findings = [], lookedFor }: Story, day: number): boolean {
  if (lookedFor !== false && [...urine.map((one) => one.day), ...findings.map(([on]) => on)].includes(day)) return true;
  return signs.some(({ sign, finding = "present", day: on }) => {
    if (on !== day) return false;
    const degrees = Number.parseFloat(sign);
    if (Number.isNaN(degrees)) return sign === "temperature" && finding === "absent";
    const celsius = sign.endsWith("F") ? (degrees - 32) / 1.8 : degrees;
    return finding === "absent" || (finding === "present" && celsius > 13 && celsius < 46);
  });
}

/** What every way in which the unknown can be says of few temperatures; undefined where they differ. */
export function agreed(said: ReadonlySet<boolean | undefined>): boolean | undefined {
  const known = [...said].filter((one) => one !== undefined);
  return known.length === 1 ? known[0] : undefined;
}
