import type { readCase as endpoint } from "../../../shared/api/cases.ts";
import { determinationCaution } from "../../../shared/culture-words.ts";
import type { OutputOf } from "../../../shared/endpoint.ts";
import { refuse } from "../../../shared/problems.ts";
import { completedMonths } from "../../domain/criteria/index.ts";
import { surveillanceOf } from "../../domain/cultures/surveillance-of.ts";
import { determinationWithCodes, type WardCodes } from "../../domain/cultures/ward-codes.ts";
import { dayText } from "../../domain/days/day-number.ts";
import { cultureRecords } from "../../store/culture-records.ts";
import { type DecisionRow, decisionsOf } from "../../store/decisions.ts";
import {
  determinationIn,
  determinationsOf,
  determinationsOfCase,
  type KeptDetermination,
} from "../../store/determinations.ts";
import { wardCodes } from "../../store/wards.ts";
import { type Act, recording } from "../act.ts";
import { view } from "../view.ts";
import { aboutCase, wholeWords } from "./case-answers.ts";
import { pictureOf } from "./case-picture.ts";
import { determinationAnswer } from "./determination-answer.ts";
import { determineByNow } from "./determine-by-now.ts";
import { loadDeterminingRules } from "./determining-rules.ts";

type Answer = OutputOf<typeof endpoint>;

/**
 * A determined culture with its derivation, what was decided about it and what it was before, and the patient's days
 * around it; the view is recorded. Refuses `not-found`.
 */
export async function readCase(act: Act, { caseId }: { readonly caseId: number }): Promise<Answer> {
  await determineByNow(act);
  const by = recording(act);
  return view(act, async (read, seen) => {
    const history = await determinationsOfCase(read, by.facilityId, caseId);
    const kept = history.at(-1) ?? refuse("not-found", "There is no such record in this facility.");
    const rules = await loadDeterminingRules(read, by.facilityId);
    const today = rules.zone.dayOf(act.now);
    const [record] = await cultureRecords(read, [kept.survivorId]);
    if (!record) throw new Error(`case ${caseId} has no patient`);
    const codes = await wardCodes(read, by.facilityId);
    const others = await determinationsOf(read, [kept.survivorId]);
    const decisions = await decisionsOf(read, caseId);
    const details = { caseId, number: kept.number };
    seen({ action: "view-case", patientIds: [kept.survivorId], details });
    return {
      ...aboutCase(kept, { record, codes, today, history }),
      ...{ caution: determinationCaution, knownThrough: dayText(today) },
      ageMonths: record.birthDay === null ? null : completedMonths(record.birthDay, kept.eventDay ?? kept.day),
      determination: determinationTold(kept, codes),
      decisions: decisions.map((one) => decisionTold(one, history, codes)),
      history: history.map((one, i) => versionTold(one, history[i - 1], codes)),
      picture: pictureOf({
        record,
        timeline: surveillanceOf(record, rules, today),
        kept,
        others,
        words: rules.words,
      }),
    };
  });
}

function determinationTold(kept: KeptDetermination, codes: WardCodes): Answer["determination"] {
  const determination = determinationIn(kept);
  return determination && determinationAnswer(determinationWithCodes(determination, codes));
}

function decisionTold(
  { kind, about, reason, decidedAt: at, decidedBy: by }: DecisionRow,
  history: readonly KeptDetermination[],
  codes: WardCodes,
): Answer["decisions"][0] {
  const seen = history.find(({ number }) => number === about);
  return { kind, summary: seen ? wholeWords(seen, codes) : "", reason, at, by };
}

function versionTold(
  one: KeptDetermination,
  before: KeptDetermination | undefined,
  codes: WardCodes,
): Answer["history"][0] {
  const { number, editionId, cause, reason, determinedAt: at, determinedBy: by } = one;
  const isChange = one.reported !== before?.reported;
  return { number, summary: wholeWords(one, codes), editionId, isChange, cause, reason, at, by };
}
