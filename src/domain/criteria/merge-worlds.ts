import type { DayNumber } from "../days/day-number.ts";
import { type Attempt, attempt, isOutside } from "./attempt.ts";
import type { Step, Subject } from "./determination.ts";
import type { CultureQuestion, PossibleCulture } from "./possible-cultures.ts";
import { questionStep, tellUnknown } from "./tell-unknown.ts";
import type { Choice, Unknown, World } from "./world.ts";

/** What is asked of an anchor: in every way in which its culture can turn out, and from which day evidence counts. */
export interface Asked {
  readonly anchor: Subject;
  /** null: the anchor is no culture. */
  readonly cultures: readonly PossibleCulture[] | null;
  readonly questions: readonly CultureQuestion[];
  readonly evidenceFrom: DayNumber | null;
}

/** One way in which all that is unknown can be, and what the anchor comes to then. */
export interface Tried {
  readonly world: World;
  readonly possible: PossibleCulture;
  readonly attempt: Attempt;
  /** Two with the same key are told alike. */
  readonly key: string;
}

const noCulture: PossibleCulture = { culture: null, answers: [[]] };

/** What an anchor comes to whatever the unknown is; what depends on the unknown cannot be told, with what to look up. */
export function attemptInAll(worlds: readonly World[], asked: Asked): Attempt {
  const each = worlds.flatMap((world) =>
    (asked.cultures ?? [noCulture]).map((possible) => triedIn(world, possible, asked)),
  );
  const [first] = each;
  if (!first) throw new Error("a timeline has at least one world");
  const usable = each.filter((one) => one.attempt.outcome !== "not-usable");
  const shown = usable.length > 0 ? usable : each;
  if (usable.length === 0 || new Set(each.map(({ key }) => key)).size === 1) return (shown[0] ?? first).attempt;
  const open = unknowns.filter(([, field]) => decides(each, (one) => String(one.world.choice[field]), others(field)));
  const asks = asked.questions.filter((_, at) => hangsOn(each, at));
  const told = asks.map((question) => questionStep(question, asked.questions.indexOf(question), each, asked.anchor));
  return {
    outcome: "cannot-tell",
    met: null,
    steps: [
      ...sharedSteps(shown, asks.length > 0),
      ...open.map(([what]) => tellUnknown(what, first.world, asked.anchor)),
      ...told,
    ],
  };
}

/** A culture that cannot be used is tried only where an edition takes other evidence beside it. */
function triedIn(world: World, possible: PossibleCulture, { anchor, cultures, evidenceFrom }: Asked): Tried {
  const isUnusable = cultures !== null && possible.culture === null;
  if (isUnusable && !world.edition.anchors.includes("finding")) return unusable(world, possible, anchor, []);
  const tried = attempt(world, { anchor, culture: possible.culture, evidenceFrom });
  if (isUnusable && (tried.outcome === "not-met" || tried.outcome === "set-aside"))
    return unusable(world, possible, anchor, tried.steps);
  return { world, possible, attempt: tried, key: keyOf(tried) };
}

/** No infection: told like a usable culture that comes to nothing in the same world. */
function unusable(world: World, possible: PossibleCulture, anchor: Subject, steps: readonly Step[]): Tried {
  const key = isOutside(world, anchor.day) ? "set-aside" : "not-met";
  return { world, possible, attempt: { outcome: "not-usable", met: null, steps }, key };
}

function keyOf({ outcome, met }: Attempt): string {
  if (!met) return outcome;
  const { criterion, dateOfEvent, onset, isAssociated, wardId, episode } = met;
  return [outcome, criterion.id, dateOfEvent, onset, isAssociated, wardId, episode.firstDay].join(" ");
}

/** Steps that are told in every way; none from a criterion on that only holds if the culture can be used. */
function sharedSteps([first, ...rest]: readonly Tried[], isCultureOpen: boolean): Step[] {
  const steps = (first?.attempt.steps ?? []).filter((step) =>
    rest.every(({ attempt: { steps: others } }) => others.some(({ sentence }) => sentence === step.sentence)),
  );
  const criteria = new Set<string>(first?.world.edition.criteria.map(({ id }) => id));
  const end = isCultureOpen ? steps.findIndex(({ rule, status }) => status === "held" && criteria.has(rule)) : -1;
  return end < 0 ? steps : steps.slice(0, end);
}

const unknowns: readonly (readonly [Unknown, keyof Choice])[] = [
  ["age", "age"],
  ["removal", "catheters"],
  ["signs", "doubtfulSigns"],
  ["setting", "unknownWards"],
];

/** All that was chosen in a world but one field. */
const others = (field: keyof Choice | null) => (one: Tried) =>
  unknowns.flatMap(([, name]) => (name === field ? [] : [one.world.choice[name]])).join(" ");

/** Whether something changes the answer while all the rest stays: of the cultures, while the same one is looked at. */
function decides(each: readonly Tried[], field: (one: Tried) => string, rest: (one: Tried) => string): boolean {
  const found = new Map<string, Map<string, string>>();
  for (const one of each) {
    const place = `${rest(one)} ${one.possible.answers[0]?.join(",")}`;
    const keys = found.get(place) ?? new Map<string, string>();
    found.set(place, keys.set(field(one), one.key));
  }
  return [...found.values()].some((keys) => new Set(keys.values()).size > 1);
}

/** Whether the answer to one question about the culture changes what comes out while all other answers stay. */
function hangsOn(each: readonly Tried[], at: number): boolean {
  const found = new Map<string, Set<string>>();
  for (const one of each) {
    const world = others(null)(one);
    for (const answers of one.possible.answers) {
      const place = `${world} ${answers.map((answer, i) => (i === at ? "" : answer)).join(",")}`;
      found.set(place, (found.get(place) ?? new Set()).add(one.key));
    }
  }
  return [...found.values()].some((keys) => keys.size > 1);
}
