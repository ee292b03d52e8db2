import type { Fault } from "../../../shared/problems.ts";
import { newSign, type RecordedSign } from "../../domain/cultures/sign.ts";
import { signFaults } from "../../domain/cultures/sign-faults.ts";
import type { DayNumber, Instant } from "../../domain/days/day-number.ts";
import type { Mark } from "../../domain/timeline/timeline.ts";
import { writeAudit } from "../../store/audit.ts";
import { lockPatient } from "../../store/patients.ts";
import { addSigns } from "../../store/signs.ts";
import type { Tx } from "../../store/store.ts";
import { type Act, recording } from "../act.ts";
import { type DaysOfPatient, daysOfPatient, refuseFaults } from "./change-culture.ts";
import { determineAgain } from "./determine-again.ts";
import { type GivenSign, momentOf, reviewFaults, temperatureOf } from "./given-signs.ts";

export interface RecordSigns {
  readonly patientId: number;
  readonly day: DayNumber;
  readonly signs: readonly GivenSign[];
  /** Of the chart review (`not-documented`): its last day, else the day itself, and when the chart was read, else now. */
  readonly lastDay?: DayNumber | undefined;
  readonly readAt?: Instant | undefined;
  /** What is doubtful about the time at which the chart was read. */
  readonly marks?: readonly Mark[] | undefined;
  /** Pointers of unusual values that somebody has checked. */
  readonly confirm?: readonly string[] | undefined;
}

/**
 * Records what was found of signs on a day, or not documented in a chart that was read: all of them or none, with one
 * audit entry. A sign that is not given was not looked for.
 * Refuses, all faults at once: `in-the-future`, `outside-surveillance-days`, `time-does-not-exist`, `field-unreadable`
 * and `out-of-bounds` for a temperature, `unusual-value`, `sign-contradicts`; and `not-found`.
 */
export function recordSigns(act: Act, input: RecordSigns): Promise<{ signIds: number[] }> {
  const { patientId, day } = input;
  const work = async (tx: Tx) => {
    const by = recording(act);
    const { id: survivorId } = await lockPatient(tx, by.facilityId, { patientId });
    const days = await daysOfPatient(tx, { facilityId: by.facilityId, survivorId, now: by.now });
    const judged = input.signs.map((given, i) => {
      const writing = { id: tx.newId(), patientId, writtenAt: by.now, writtenBy: by.personId };
      return judge(given, { writing, input, days, at: `/signs/${i}`, now: by.now });
    });
    const review = reviewFaults(
      { lastDay: input.lastDay ?? null, readAt: input.readAt ?? null },
      { days, now: by.now },
    );
    refuseFaults([...days.faultsOf(day, "/day"), ...review, ...judged.flatMap(({ faults }) => faults)]);
    await addSigns(
      tx,
      judged.map(({ sign }) => sign),
    );
    await determineAgain(tx, by, { patientIds: [survivorId], cause: "record-signs" });
    const signIds = judged.map(({ sign }) => sign.id);
    await writeAudit(tx, by, { action: "record-signs", patientIds: [survivorId], details: { signIds } });
    return { signIds };
  };
  return act.store.tx(work, { ids: input.signs.length });
}

function judge(
  { sign: name, time, finding, temperature: written, otherCause = false }: GivenSign,
  given: {
    writing: Parameters<typeof newSign>[0];
    input: RecordSigns;
    days: DaysOfPatient;
    at: string;
    now: number;
  },
): { sign: RecordedSign; faults: Fault[] } {
  const { writing, input, days, at: pointer, now } = given;
  const { day, confirm: confirmed = [] } = input;
  const { temperature, faults } = temperatureOf(written ?? null, `${pointer}/temperature`);
  // A day that has not come is told as such once, and not again for every hour of it.
  const when = { day, time: day > days.today ? null : (time ?? null) };
  const { at, marks, faults: ofTime } = momentOf(when, { zone: days.zone, now, pointer: `${pointer}/time` });
  const review = finding === "not-documented" ? reviewOf(input, now) : notReviewed;
  const text = { sign: name, day, at, finding, temperature, otherCause, ...review };
  const sign = newSign(writing, { ...text, marks: [...marks, ...review.marks] });
  return { sign, faults: [...ofTime, ...faults, ...signFaults(sign, { at: pointer, confirmed, zone: days.zone })] };
}

const notReviewed = { lastDay: null, readAt: null, marks: [] };

function reviewOf({ lastDay, readAt, marks = [] }: RecordSigns, now: Instant) {
  return { lastDay: lastDay ?? null, readAt: readAt ?? now, marks };
}
