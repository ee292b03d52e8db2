import { findingKinds } from "../../../../shared/case-words.ts";
import type { SignName } from "../../../../shared/culture-words.ts";
import type { PictureMark } from "../../../charts/day-picture.ts";
import { dayWords } from "../../parts/words.ts";
import { caseText } from "../../texts/case.ts";
import { findingText, signText, specimenKindText, specimenStatusText } from "../../texts/culture-words.ts";
import { culturesText } from "../../texts/cultures.ts";
import type { PictureDays } from "./case-picture.ts";
import type { Case } from "./case-rows.ts";

/** What stands beside the mark of a sign; the picture's text says the whole. */
const shortSigns: Readonly<Record<Exclude<SignName, "temperature">, string>> = {
  "suprapubic-tenderness": "SPT",
  "costovertebral-pain": "CVA",
  urgency: "urg",
  frequency: "freq",
  dysuria: "dys",
  apnea: "apn",
  bradycardia: "brad",
  lethargy: "leth",
  vomiting: "vom",
  chills: "chill",
  hypotension: "hypo",
};

/** The short words of signs with what they stand for, for the key of the picture. */
export function shortSignsIn({ picture }: Case): { short: string; sign: SignName }[] {
  const names = new Set(picture.signs.filter(({ voidReason }) => voidReason === null).map(({ sign }) => sign));
  return [...names].flatMap((sign) => (sign === "temperature" ? [] : [{ short: shortSigns[sign], sign }]));
}

/** Signs that somebody looked for: present, or absent as an empty ring. */
export function signMarks({ picture }: Case, days: PictureDays): PictureMark[] {
  const found = picture.signs.flatMap(({ sign, day, finding, temperature, otherCause, voidReason }) => {
    const at = days.at(day);
    if (at === null || voidReason !== null || finding === "not-recorded" || finding === "not-documented") return [];
    const said = [
      sign === "temperature" ? `${signText(sign)} ${temperature ?? ""}`.trim() : signText(sign),
      ...(finding === "absent" ? [findingText(finding)] : []),
      ...(otherCause ? [culturesText("otherKnown")] : []),
    ];
    return [
      {
        ...{ day: at, shape: finding === "present" ? ("triangle" as const) : ("ring" as const) },
        word: sign === "temperature" ? (temperature ?? "").replace(/\s*°.*$/, "") : shortSigns[sign],
        text: caseText("markOf", { what: said.join(", "), day: dayWords(day) }),
      },
    ];
  });
  return [...found, ...reviewMarks(picture.signs, days)];
}

/** The first day of each chart review: a square, with the signs that it does not document in its text. */
function reviewMarks(signs: Case["picture"]["signs"], days: PictureDays): PictureMark[] {
  const reviews = signs.filter(({ finding, voidReason }) => finding === "not-documented" && voidReason === null);
  return [...new Set(reviews.map(({ day }) => day))].flatMap((day): PictureMark[] => {
    const at = days.at(day);
    if (at === null) return [];
    const names = reviews.filter((one) => one.day === day).map(({ sign }) => signText(sign));
    const what = `${findingText("not-documented")}: ${names.join(", ")}`;
    return [{ day: at, shape: "square", word: "ND", text: caseText("markOf", { what, day: dayWords(day) }) }];
  });
}

/** Specimens of urine and blood, and findings in urine; the culture that the page is about stands out by its shape. */
export function cultureMarks({ picture, subject }: Case, days: PictureDays): PictureMark[] {
  const specimens = picture.specimens.flatMap(({ specimenId, kind, day, status, organisms, voidReason }) => {
    const at = days.at(day);
    if (at === null || voidReason !== null) return [];
    const isThis = subject.kind === "specimen" && subject.id === specimenId;
    const grew = organisms.map(({ name, count }) => (count === null ? name : `${name} ${count}`));
    const said = [
      ...[specimenKindText(kind), specimenStatusText(status), ...grew],
      ...(isThis ? [caseText("thisCulture")] : []),
    ];
    return [
      {
        ...{ day: at, shape: isThis ? ("diamond" as const) : ("square" as const) },
        word: caseText(kind === "urine" ? "wordUrine" : "wordBlood"),
        text: caseText("markOf", { what: said.join(", "), day: dayWords(day) }),
      },
    ];
  });
  const findings = picture.findings.flatMap(({ findingId, finding, day, present, voidReason }) => {
    const at = days.at(day);
    if (at === null || voidReason !== null || !present) return [];
    const isThis = subject.kind === "finding" && subject.id === findingId;
    return [
      {
        ...{ day: at, shape: isThis ? ("diamond" as const) : ("square" as const), word: "" },
        text: caseText("markOf", { what: findingKinds[finding], day: dayWords(day) }),
      },
    ];
  });
  return [...specimens, ...findings];
}
