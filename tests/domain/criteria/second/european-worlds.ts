import type { Story } from "../../../../src/domain/criteria/story.ts";
import { isKnown } from "./european-grown.ts";
import { type Chosen, settingsOf, tubesOf } from "./possible-worlds.ts";

export const europeanSigns = ["fever", "urgency", "frequency", "dysuria", "suprapubic-tenderness"];

export interface EuropeanWorld extends Pick<Chosen, "tubes" | "inpatient"> {
  /** Signs that were there, by day. */
  readonly signs: readonly { readonly name: string; readonly day: number }[];
}

/** Every way in which the unknown of a story can be filled in. */
export function* europeanWorlds(story: Story): Generator<EuropeanWorld> {
  const told = (story.signs ?? []).filter(({ finding = "present", otherCause = false, day }) => {
    return finding === "present" && !otherCause && isKnown(day, story);
  });
  const sure = told.flatMap(({ sign, day }) => {
    if (degreesOf(sign) === null) return europeanSigns.includes(sign) ? [{ name: sign as string, day }] : [];
    return isBody(sign) && Number.parseFloat(sign) > (sign.endsWith("F") ? 100.4 : 38) ? [{ name: "fever", day }] : [];
  });
  const isDoubtful = (sign: string) => sign === "temperature" || (degreesOf(sign) !== null && !isBody(sign));
  const doubtful = told.filter(({ sign }) => isDoubtful(sign)).map(({ day }) => ({ name: "fever", day }));
  for (const inpatient of settingsOf(story)) {
    for (const tubes of tubesOf(story)) {
      for (let bits = 0; bits < 2 ** doubtful.length; bits++) {
        yield { inpatient, tubes, signs: [...sure, ...doubtful.filter((_, i) => (bits >> i) % 2 === 1)] };
      }
    }
  }
}

function degreesOf(sign: string): number | null {
  const degrees = Number.parseFloat(sign);
  return Number.isNaN(degrees) ? null : degrees;
}

/** Whether a temperature is one that a living body can have; of another nobody knows what it was. */
function isBody(sign: string): boolean {
  const degrees = degreesOf(sign) ?? 0;
  const celsius = sign.endsWith("F") ? (degrees - 32) / 1.8 : degrees;
  return celsius > 13 && celsius < 46;
}
