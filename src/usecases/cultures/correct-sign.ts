import { z } from "zod";
import { signState } from "../../../shared/api/culture-entries.ts";
import { correctSign as decide, type RecordedSign } from "../../domain/cultures/sign.ts";
import { signFaults } from "../../domain/cultures/sign-faults.ts";
import type { DayNumber, Instant } from "../../domain/days/day-number.ts";
import { type Mark, revise } from "../../domain/timeline/timeline.ts";
import { replaceSign, signOf } from "../../store/signs.ts";
import type { Act } from "../act.ts";
import { movedMoment } from "../record/moved-moment.ts";
import { type CultureChange, type CultureKind, changeCulture, refuseFaults } from "./change-culture.ts";
import { signAnswer } from "./culture-answers.ts";
import { type GivenSign, reviewFaults, temperatureOf } from "./given-signs.ts";

const signs: CultureKind<RecordedSign> = {
  name: "sign",
  key: (signId) => ({ signId }),
  load: signOf,
  replace: replaceSign,
  current: (sign) => z.encode(signState, signAnswer(sign)),
};

/** A change of a sign. */
export type SignChange = Omit<CultureChange, "id"> & { readonly signId: number };

/** What a correction gives anew; null takes a time or a temperature away. */
export type GivenChanges = Partial<Pick<GivenSign, "finding" | "otherCause">> & {
  readonly day?: DayNumber | undefined;
  readonly time?: string | null | undefined;
  readonly temperature?: string | null | undefined;
  readonly lastDay?: DayNumber | null | undefined;
  readonly readAt?: Instant | undefined;
  readonly marks?: readonly Mark[] | undefined;
};

/**
 * Corrects a sign. A sign of another day keeps its hour unless one is given; a sign of another name is another sign.
 * Refuses `stale-version`, `entry-voided`, and what a new sign is refused for.
 */
export async function correctSign(
  act: Act,
  input: SignChange & { readonly changes: GivenChanges; readonly confirm?: readonly string[] | undefined },
): Promise<{ signId: number; version: number }> {
  const { signId, changes, confirm = [] } = input;
  // A temperature that stays as it is was looked at when it was recorded.
  const confirmed = changes.temperature === undefined ? ["/temperature"] : confirm;
  const { version } = await changeCulture(
    act,
    { ...input, id: signId },
    {
      kind: signs,
      action: "correct-sign",
      decide: async (_tx, old, daysOf) => {
        const { finding = old.finding, otherCause = old.otherCause } = changes;
        const { temperature, faults } =
          changes.temperature === undefined
            ? { temperature: old.temperature, faults: [] }
            : temperatureOf(changes.temperature, "/temperature");
        const days = await daysOf();
        const moved = await movedMoment(old, changes, { daysOf: async () => days, now: act.now });
        const review = reviewOf(old, { ...changes, finding }, act.now);
        const sign = decide(old, { finding, otherCause, temperature, ...review, ...moved.when }, [
          ...moved.marks,
          ...(changes.marks ?? []),
        ]);
        const ofReview = reviewFaults({ ...review, lastDay: changes.lastDay ?? null }, { days, now: act.now });
        const ofSign = signFaults(sign, { at: "", confirmed, zone: days.zone });
        refuseFaults([...moved.faults, ...faults, ...ofReview, ...ofSign]);
        return sign;
      },
    },
  );
  return { signId, version };
}

/** The days of a chart review after a correction; a finding that is none has none. What becomes a review was read now. */
function reviewOf(old: RecordedSign, { finding, lastDay, readAt }: GivenChanges, now: Instant) {
  if (finding !== "not-documented") return { lastDay: lastDay ?? null, readAt: readAt ?? null };
  return { lastDay: lastDay === undefined ? old.lastDay : lastDay, readAt: readAt ?? old.readAt ?? now };
}

/** Voids a sign that was recorded in error; it stays readable and decides nothing. Refuses `stale-version`, `entry-voided`. */
export async function voidSign(act: Act, input: SignChange): Promise<{ signId: number; version: number }> {
  const { signId, reason } = input;
  const { version } = await changeCulture(
    act,
    { ...input, id: signId },
    {
      kind: signs,
      action: "void-sign",
      decide: async (_tx, old) => revise(old, { voidReason: reason }),
    },
  );
  return { signId, version };
}
