import type { Story } from "../../../../src/domain/criteria/story.ts";
import { europeanClosed, isKnown, possibleUse } from "./european-grown.ts";
import { possibleSupport } from "./european-support.ts";
import { type EuropeanWorld, europeanSigns, europeanWorlds } from "./european-worlds.ts";
import { agreed, hasFewTemperatures } from "./few-temperatures.ts";
import type { Answer } from "./second-determine.ts";

/** What starts a determination: a urine specimen or a finding in urine, by its day. */
interface Start {
  readonly kind: "specimen" | "finding";
  readonly id: number;
  readonly day: number;
}
export type EuropeanAnswer = Omit<Answer, "repeatOf" | "id"> & { readonly id: string; repeatOf?: string };
type Said = Omit<EuropeanAnswer, "id">;

/** All urine specimens and findings of a story by the European definitions of 2017. */
export function secondEuropean(story: Story): EuropeanAnswer[] {
  const starts: Start[] = [
    ...(story.urine ?? []).map(({ day }, i) => ({ kind: "specimen" as const, id: i + 1, day })),
    ...(story.findings ?? []).map(([day], i) => ({ kind: "finding" as const, id: i + 1, day })),
  ].filter(({ kind, day }) => kind === "specimen" || day <= (story.knownThrough ?? 60));
  starts.sort((a, b) => a.day - b.day || (a.kind === b.kind ? a.id - b.id : a.kind === "specimen" ? -1 : 1));
  const answers = starts.map((start) => ({ id: `${start.kind} ${start.id}`, ...sayOf(start, story) }));
  return foldRepeats(answers);
}

function sayOf(start: Start, story: Story): Said {
  const urine = start.kind === "specimen" ? story.urine?.[start.id - 1] : undefined;
  const closed = urine ? europeanClosed(urine, story) : null;
  if (closed !== null && closed !== "not-usable") return { outcome: closed };
  const uses = closed === "not-usable" ? new Set([false]) : urine ? possibleUse(urine) : new Set([true]);
  const said = new Map<string, Said>();
  const fews = new Set<boolean | undefined>();
  let isOfNoUse = true;
  for (const world of europeanWorlds(story)) {
    for (const use of uses) {
      const { few, ...one } = judge(start.day, use && urine !== undefined, story, world);
      // Nothing is said of a specimen that cannot be used.
      if (use) fews.add(few);
      const isNothing = one.outcome === "not-met" || one.outcome === "set-aside";
      if (use || !isNothing) isOfNoUse = false;
      // Without any use of the culture, no infection and no admission come to the same.
      const answer = isNothing && !uses.has(true) ? { outcome: "not-usable" } : one;
      said.set(JSON.stringify(answer), answer);
    }
  }
  if (isOfNoUse) return { outcome: "not-usable" };
  const [only] = said.values();
  return said.size === 1 && only ? { ...only, few: agreed(fews) } : { outcome: "cannot-tell" };
}

/** Within 14 days of the onset of an infection of a stay, whatever else is found belongs to it. */
function foldRepeats(answers: EuropeanAnswer[]): EuropeanAnswer[] {
  const counted: EuropeanAnswer[] = [];
  const events = answers.filter(({ outcome }) => outcome === "event");
  for (const event of events.sort((a, b) => (a.date ?? 0) - (b.date ?? 0))) {
    const before = counted.find(
      ({ admission, date = 0 }) => admission === event.admission && (event.date ?? 0) - date < 14,
    );
    if (before) Object.assign(event, { outcome: "repeat", repeatOf: before.id });
    else counted.push(event);
  }
  return answers;
}

interface Stay {
  readonly first: number;
  readonly last: number;
  readonly isOver: boolean;
  wardOn(day: number): number | null;
}

function staysOf(story: Story, { inpatient }: EuropeanWorld): Stay[] {
  const known = story.knownThrough ?? 60;
  const cuts = [0, ...(story.newStayAt ?? []), story.wards?.length ?? 0];
  const stays = cuts.slice(1).flatMap((end, i) => {
    const parts = (story.wards ?? []).slice(cuts[i], end);
    const beds = parts
      .filter(([, from], n) => inpatient[(cuts[i] ?? 0) + n] && from <= known)
      .map(([ward, from, to]) => ({ ward, from, to: Math.min(to ?? known, known) }));
    if (beds.length === 0) return [];
    const left = parts.at(-1)?.[2] ?? null;
    return [
      {
        first: Math.min(...beds.map(({ from }) => from)),
        last: Math.max(...beds.map(({ to }) => to)),
        isOver: story.discharged !== false && left !== null && left <= known,
        wardOn: (day: number) => beds.find(({ from, to }) => from <= day && day <= to)?.ward ?? null,
      },
    ];
  });
  return stays.sort((a, b) => a.first - b.first || a.last - b.last);
}

function judge(day: number, hasCulture: boolean, story: Story, world: EuropeanWorld): Said {
  let said: Said = { outcome: "set-aside" };
  const stays = staysOf(story, world);
  for (const stay of stays) {
    if (day < stay.first - 2 || (stay.isOver && day > stay.last + 4)) continue;
    said = judgeIn(day, hasCulture, story, world, stay, stays);
    if (said.outcome === "event" || said.outcome === "cannot-tell") return said;
  }
  return said;
}

function judgeIn(
  day: number,
  hasCulture: boolean,
  story: Story,
  world: EuropeanWorld,
  stay: Stay,
  stays: readonly Stay[],
): Said {
  const [from, to] = [day - 3, day + 3];
  const signs = world.signs.filter((one) => one.day >= from && one.day <= to);
  const date = Math.min(...signs.map((one) => one.day));
  const kinds = new Set(signs.map(({ name }) => name));
  const unknown = unknownSigns(story, from, to, stay);
  if (hasCulture && kinds.size > 0) return conclude("uti-a", date, world, stay, stays);
  const isOpen = hasCulture && unknown.length > 0;
  const support = possibleSupport(story, from, to);
  if (support.has(true)) {
    if (kinds.size >= 2 && support.size === 1) return conclude("uti-b", date, world, stay, stays);
    const others = unknown.filter((name) => !kinds.has(name)).length;
    if (kinds.size >= 2 || (others > 0 && kinds.size + others >= 2)) return { outcome: "cannot-tell" };
  }
  const few = !kinds.has("fever") && hasFewTemperatures(story, { from, to, ...stay });
  return { outcome: isOpen ? "cannot-tell" : "not-met", few };
}

/** Signs of which the record cannot say that there was none. */
function unknownSigns(story: Story, from: number, to: number, { isOver, last }: Stay): string[] {
  const { knownThrough = 60, died = 99 } = story;
  if (isOver && from > last) return [];
  if (knownThrough < Math.min(to, died, isOver ? last + 1 : to)) return europeanSigns;
  const isIn = (day: number) => day >= from && day <= to && isKnown(day, story);
  const askedOn = [...(story.urine ?? []).map((one) => one.day), ...(story.findings ?? []).map(([day]) => day)];
  if (story.lookedFor !== false && askedOn.some(isIn)) return [];
  const isTemperature = (sign: string) => sign === "temperature" || !Number.isNaN(Number.parseFloat(sign));
  const closes = Math.min(to, died, isOver ? last + 1 : to);
  return europeanSigns.filter((name) => {
    const own = (story.signs ?? []).filter(({ sign }) => (name === "fever" ? isTemperature(sign) : sign === name));
    const isFound = own.some(
      ({ finding = "present", day }) => finding !== "not-recorded" && !isRead(finding) && isIn(day),
    );
    // Day by day: a review of the chart speaks of the days that it names, as far as they had come when it was read.
    const isOpen = Array.from({ length: closes - from + 1 }, (_, i) => from + i).some((day) => {
      return !own.some(({ finding, day: first, through = first, read = through }) => {
        return isRead(finding) && isKnown(first, story) && first <= day && day <= Math.min(through, read);
      });
    });
    return !isFound && isOpen;
  });
}

function isRead(finding: string | undefined): boolean {
  return finding === "not-documented";
}

function conclude(criterion: string, date: number, world: EuropeanWorld, stay: Stay, stays: readonly Stay[]): Said {
  // Back less than 2 days after a stay that was over before the onset.
  const isBack = stays
    .slice(0, stays.indexOf(stay))
    .some(({ last }) => last <= date && last <= stay.first && stay.first - last < 2);
  const isOwn = date >= stay.first + 2 || isBack || placements(world).some((at) => at >= stay.first && at <= date);
  return {
    outcome: stay.isOver && date > stay.last + 1 ? "after-discharge" : "event",
    criterion,
    date,
    onset: isOwn ? "healthcare-associated" : "present-on-admission",
    device: world.tubes.some(({ from, to }) => from <= date && to >= date - 7),
    ward: isOwn ? (stay.wardOn(date) ?? stay.wardOn(date - 1)) : null,
    admission: stay.first,
  };
}

/**
 * Days on which a catheter was inserted, at 9 o'clock, but for one in exchange for another that was still there. Where one
 * of the two hours is not known, only a later day of the other tells that, or an hour at which it was still seen.
 */
function placements({ tubes }: EuropeanWorld): number[] {
  return tubes.flatMap((tube, i) => {
    const isExchange = tubes.some(({ from, lastSeen, told, isBroken, hours }, n) => {
      const isEarlier = from < tube.from || (from === tube.from && (!told || n < i));
      if (!isEarlier || isBroken) return false;
      const isSeen = !tube.anyHour && (hours === undefined || hours.after >= 9);
      return lastSeen === null || lastSeen > tube.from || (isSeen && lastSeen === tube.from);
    });
    return tube.told && !isExchange ? [tube.from] : [];
  });
}
