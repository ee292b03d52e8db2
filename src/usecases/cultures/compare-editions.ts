import type { compareEditions as endpoint } from "../../../shared/api/editions.ts";
import type { EditionId } from "../../../shared/edition-words.ts";
import type { OutputOf } from "../../../shared/endpoint.ts";
import { type Determination, determine, differenceBetween, summaryOf } from "../../domain/criteria/index.ts";
import { summaryWords } from "../../domain/cultures/summary-words.ts";
import { surveillanceOf } from "../../domain/cultures/surveillance-of.ts";
import type { WardCodes } from "../../domain/cultures/ward-codes.ts";
import { dayText } from "../../domain/days/day-number.ts";
import { editionNamed } from "../../domain/editions/index.ts";
import { casesCollected } from "../../store/case-lists.ts";
import { cultureRecords } from "../../store/culture-records.ts";
import type { DayRange } from "../../store/ward-days.ts";
import { wardCodes } from "../../store/wards.ts";
import { type Act, recording } from "../act.ts";
import { refuseLongPeriod } from "../period.ts";
import { view } from "../view.ts";
import { loadWayRules } from "./way-rules.ts";

type Answer = OutputOf<typeof endpoint>;

/**
 * Which determinations of cultures collected on some days would be other under another edition, whatever their wards are
 * watched by. Nothing is stored but that somebody looked. Refuses `end-before-start`, `period-too-long`.
 */
export function compareEditions(
  act: Act,
  input: DayRange & { readonly editionId: EditionId; readonly otherId: EditionId },
): Promise<Answer> {
  const { first, last } = input;
  refuseLongPeriod(input);
  const [from, to] = [editionNamed(input.editionId), editionNamed(input.otherId)];
  if (!from || !to) throw new Error("an edition is named and not held");
  const by = recording(act);
  return view(act, async (read, seen) => {
    const rules = await loadWayRules(read, by.facilityId);
    const codes = await wardCodes(read, by.facilityId);
    const cases = await casesCollected(read, by.facilityId, { first, last });
    const patientIds = [...new Set(cases.map(({ survivorId }) => survivorId))];
    const knownThrough = rules.zone.dayOf(act.now);
    const isAsked = ({ subject: { day } }: Pick<Determination, "subject">) => day >= first && day <= last;
    let compared = 0;
    const differences: Answer["differences"] = [];
    for (const record of await cultureRecords(read, patientIds)) {
      const timeline = surveillanceOf(record, rules, knownThrough);
      compared += determine(timeline, from).filter(isAsked).length;
      for (const { subject, before, after } of differenceBetween(timeline, from, to).filter(isAsked))
        differences.push({
          ...{ caseId: subject.id, patientId: record.patientId },
          subject: { ...subject, day: dayText(subject.day) },
          before: readAs(before, codes),
          after: readAs(after, codes),
        });
    }
    const details = { editionId: from.id, otherId: to.id, first: dayText(first), last: dayText(last) };
    seen({ action: "compare-editions", patientIds, details });
    return { compared, differences };
  });
}

function readAs(determination: Determination | null, codes: WardCodes): Answer["differences"][0]["before"] {
  if (determination === null) return null;
  const { outcome, event, editionId } = determination;
  const summary = summaryWords({ summary: summaryOf(determination), outcome, editionId }, codes);
  return { outcome, summary, isCauti: event?.isCauti ?? false };
}
