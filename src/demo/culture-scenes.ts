import { dayMs, type Instant } from "../domain/days/day-number.ts";
import { type Course, catheterFrom } from "./course.ts";
import type { DemoCulture } from "./draw-cultures.ts";
import type { SceneTimes } from "./scenes.ts";
import { wardOf } from "./wards.ts";

const hourMs = 3_600_000;
const eColi = [["Escherichia coli", ">100000"]] as const;
const skin = [["Staphylococcus epidermidis", ">100000"]] as const;
const inBlood = [["Staphylococcus epidermidis", null]] as const;

/** A stay with its cultures; days are days ago, except those of cultures and of the move, which are days of the stay. */
interface CultureScene {
  readonly name: string;
  readonly ward: string;
  readonly bed: string;
  /** Admitted so many days ago, and gone so many days ago. */
  readonly days: readonly [from: number, to: number];

  /** To another ward on that day. */
  readonly move?: readonly [day: number, ward: string, bed: string];
  readonly cultures: readonly (Pick<DemoCulture, "grew" | "signs"> &
    Partial<DemoCulture> & { readonly day: number; readonly hour?: number })[];
}

/** What a year of cultures holds sooner or later, and what is determined differently. Each is found by its stay. */
const told: readonly CultureScene[] = [
  {
    ...{ name: "waiting-event", ward: "3E", bed: "25", days: [10, 2] },
    cultures: [{ day: 5, grew: eColi, signs: "fever" }],
  },
  {
    ...{ name: "cannot-tell", ward: "4N", bed: "20", days: [12, 3] },
    cultures: [{ day: 6, grew: [["Klebsiella pneumoniae", ">100000"]], signs: "unrecorded" }],
  },
  {
    ...{ name: "pending-culture", ward: "3W", bed: "21", days: [7, 0] },
    cultures: [{ day: 7, grew: [], signs: "fever", status: "pending" }],
  },
  {
    ...{ name: "repeat-culture", ward: "4N", bed: "21", days: [40, 20] },
    cultures: [
      { day: 6, grew: eColi, signs: "fever", decision: "confirmation" },
      { day: 12, grew: [["Enterococcus faecalis", ">100000"]], signs: "fever", decision: "confirmation" },
    ],
  },
  {
    ...{ name: "present-on-admission", ward: "3E", bed: "26", days: [34, 28] },
    // Whose age nobody recorded: a fever alone would decide nothing without a catheter of three days.
    cultures: [{ day: 2, grew: eColi, signs: "tenderness", decision: "confirmation" }],
  },
  {
    ...{ name: "transfer-rule", ward: "ICU", bed: "12", days: [38, 27], move: [5, "3E", "27"] },
    cultures: [{ day: 6, grew: eColi, signs: "fever", decision: "confirmation" }],
  },
  {
    ...{ name: "commensal-blood", ward: "ICU", bed: "13", days: [45, 33] },
    cultures: [
      { day: 6, grew: skin, signs: "none", decision: "confirmation" },
      { day: 6, hour: 8, kind: "blood", grew: inBlood, signs: "unrecorded" },
      { day: 7, hour: 8, kind: "blood", grew: inBlood, signs: "unrecorded" },
    ],
  },
];

/** The stays of these scenes. */
export function culturedCourses(times: SceneTimes): Course[] {
  return told.map((scene) => {
    const { name, ward, bed, days, move } = scene;
    const [from, to] = [at(times, days[0], 9), days[1] === 0 ? Number.POSITIVE_INFINITY : at(times, days[1], 11)];
    const first = { ward: wardOf(ward), bed, from, to, absence: null };
    const moved = move ? at(times, days[0] - move[0] + 1, 14) : to;
    const legs = move
      ? [
          { ...first, to: moved },
          { ...first, ward: wardOf(move[1]), bed: move[2], from: moved },
        ]
      : [first];
    const catheter = catheterFrom(from + hourMs, { number: `CX-${name}`, gone: to, removed: null });
    return { stay: `SX-${name}`, patient: `ABX-${name}`, legs, catheters: [catheter] };
  });
}

/** The cultures of these scenes; day 1 is the day of admission. */
export function sceneCultures(times: SceneTimes): DemoCulture[] {
  return told.flatMap(({ name, days, cultures }) =>
    cultures.map(({ day, hour = 7, ...said }) => ({
      ...{ stay: `SX-${name}`, kind: "urine", status: "final", decision: null, at: at(times, days[0] - day + 1, hour) },
      ...said,
    })),
  );
}

/** The instant of a local hour some days ago, or now where that has not come. */
function at({ zone, now }: SceneTimes, daysAgo: number, hour: number): Instant {
  return Math.min(now, zone.firstInstantFrom((zone.dayOf(now) - daysAgo) * dayMs + hour * hourMs));
}
