import { signFindings, signNames, specimenStatuses, urineFindings } from "../../../shared/culture-words.ts";
import { catheterKinds, wardSettings } from "../../../shared/vocabulary.ts";
import { dayWords, listWords, rangeWords } from "./in-words.ts";
import { type Story, type StorySign, type StorySpecimen, storyDay } from "./story.ts";

/** A story as sentences for people; the days are those of its timeline. What goes without saying is left out. */
export function storyWords(story: Story): string[] {
  const { urine = [], blood = [], signs = [], findings = [], died, donorSupportFrom, knownThrough } = story;
  return [
    ...ageWords(story),
    ...wardWords(story),
    ...catheterWords(story),
    ...urine.map((one) => specimenWords("Urine", one)),
    ...blood.map((one) => specimenWords("Blood", one)),
    ...signs.filter(({ finding }) => finding !== "not-documented").map(signWords),
    ...reviewWords(signs.filter(({ finding }) => finding === "not-documented")),
    ...findings.map(([day, finding]) => `${urineFindings[finding]} on ${on(day)}.`),
    ...(story.lookedFor === false ? ["Nobody wrote down whether other signs were looked for."] : []),
    ...(died === undefined ? [] : [`The patient died on ${on(died)}.`]),
    ...(donorSupportFrom === undefined ? [] : [`Supported for organ donation from ${on(donorSupportFrom)} on.`]),
    ...(knownThrough === undefined ? [] : [`The record is known up to ${on(knownThrough)}.`]),
  ];
}

function on(day: number): string {
  return dayWords(storyDay(day));
}

function ageWords({ ageYears }: Story): string[] {
  if (ageYears === undefined) return [];
  return [ageYears === null ? "Nobody knows the day of birth." : `Aged ${ageYears}.`];
}

function wardWords({ wards = [[1, 1, null]], newStayAt = [] }: Story): string[] {
  return wards.map(([ward, from, to, setting = "inpatient"], at) => {
    const what = setting === null ? "nobody said what it is for" : wardSettings[setting].toLowerCase();
    const kind = setting === "inpatient" ? "" : ` (${what})`;
    const until = to === null ? "" : ` to ${on(to)}`;
    return `${newStayAt.includes(at) ? "Admitted again, ward" : "Ward"} ${ward}${kind} from ${on(from)}${until}.`;
  });
}

function catheterWords({ catheters = [], latestRemoval }: Story): string[] {
  const told = catheters.map(([from, to, kind = "indwelling-urethral"]) => {
    const since = from === null ? "in place on arrival" : `from ${on(from)}`;
    return `${catheterKinds[kind]} ${since}${to === null ? ", still in place" : `, out on ${on(to)}`}.`;
  });
  return latestRemoval === undefined ? told : [...told, `It may have been in place until ${on(latestRemoval)}.`];
}

const hows = {
  screening: "for screening",
  "non-culture-test": "no culture",
  "catheter-tip": "the tip of a catheter",
} as const;

function specimenWords(what: string, { day, grew = [], status = "final", method }: StorySpecimen): string {
  const how = method === undefined || method === "culture" ? "" : `, ${hows[method]}`;
  const report = status === "final" ? "" : ` (${specimenStatuses[status].toLowerCase()})`;
  const organisms = grew.map(([name, count]) => `${name}, ${count ?? "no count"}`).join("; ");
  return `${what} of ${on(day)}${how}${report}: ${organisms === "" ? "no growth named" : organisms}.`;
}

function signWords({ day, sign, hour, finding = "present", otherCause = false }: StorySign): string {
  const name = nameWords(sign);
  const when = hour === undefined ? "" : ` at ${String(hour).padStart(2, "0")}:00`;
  const found = finding === "present" ? "" : `, ${signFindings[finding].toLowerCase()}`;
  return `${name}${found} on ${on(day)}${when}${otherCause ? ", with another recognized cause" : ""}.`;
}

function nameWords(sign: StorySign["sign"]): string {
  const measured = /^(-?[\d.]+)( F)?$/.exec(sign);
  if (measured) return `Temperature ${measured[1]} °${measured[2] ? "F" : "C"}`;
  return signNames[sign as keyof typeof signNames];
}

/** One sentence for each reading of the chart, with all signs that it does not document. */
function reviewWords(signs: readonly StorySign[]): string[] {
  const readings = new Map<string, string[]>();
  for (const { day, sign, through = day, read = through } of signs) {
    const days = rangeWords({ first: storyDay(day), last: storyDay(through) });
    const head = `Chart of ${days} reviewed on ${on(read)}, not documented`;
    readings.set(head, [...(readings.get(head) ?? []), nameWords(sign).toLowerCase()]);
  }
  return [...readings].map(([head, names]) => `${head}: ${listWords(names, "and")}.`);
}
