import type { listCases as endpoint } from "../../../shared/api/cases.ts";
import { type CaseList, type CaseState, caseList, caseState } from "../../../shared/case-words.ts";
import { determinationCaution } from "../../../shared/culture-words.ts";
import type { Month } from "../../../shared/day.ts";
import type { OutputOf } from "../../../shared/endpoint.ts";
import { type DayNumber, dayText } from "../../domain/days/day-number.ts";
import { monthDays } from "../../domain/days/month.ts";
import { casesBetween, casesByState, casesIn } from "../../store/case-lists.ts";
import { cultureRecords } from "../../store/culture-records.ts";
import { determinationsOfCase, type KeptDetermination } from "../../store/determinations.ts";
import type { Read } from "../../store/store.ts";
import { wardCodes } from "../../store/wards.ts";
import { type Act, recording } from "../act.ts";
import { view } from "../view.ts";
import { caseOfList } from "./case-answers.ts";
import { determineByNow } from "./determine-by-now.ts";
import { loadDeterminingRules } from "./determining-rules.ts";

const statesOf: Readonly<Record<CaseList, readonly CaseState[]>> = {
  waiting: ["waiting", "changed"],
  pending: ["pending"],
  decided: ["confirmed", "disagreed"],
  closed: ["closed"],
  "out-of-scope": ["out-of-scope"],
  all: caseState.options,
};

/** How many days of what is settled are listed unless somebody asks for more. */
const settledDays = 92;

/** The determined cultures of a list, with how many there are in each; the view is recorded. */
export async function listCases(
  act: Act,
  { list, from, month }: { readonly list: CaseList; readonly from: DayNumber | null; readonly month: Month | null },
): Promise<OutputOf<typeof endpoint>> {
  await determineByNow(act);
  const by = recording(act);
  const isSettled = list !== "waiting" && list !== "pending";
  return view(act, async (read, seen) => {
    const rules = await loadDeterminingRules(read, by.facilityId);
    const today = rules.zone.dayOf(act.now);
    const first = from ?? (isSettled ? today - settledDays : null);
    const found =
      month === null
        ? await casesIn(read, by.facilityId, { states: statesOf[list], from: first })
        : (await casesBetween(read, by.facilityId, monthDays(month))).filter(({ state }) => isIn(list, state));
    const patientIds = [...new Set(found.map(({ survivorId }) => survivorId))];
    const records = new Map((await cultureRecords(read, patientIds)).map((one) => [one.patientId, one]));
    const codes = await wardCodes(read, by.facilityId);
    const cases = [];
    for (const one of found) {
      const record = records.get(one.survivorId);
      if (!record) throw new Error(`case ${one.caseId} has no patient`);
      const history = await historyOf(read, by.facilityId, one);
      cases.push(caseOfList(one, { record, codes, today, history }, rules));
    }
    seen({ action: "view-cases", patientIds, details: { list } });
    const states = await casesByState(read, by.facilityId, from ?? today - settledDays);
    return {
      ...{ list, caution: determinationCaution, knownThrough: dayText(today) },
      cases: isSettled ? cases.reverse() : cases,
      counts: countsOf(states),
    };
  });
}

function countsOf(states: Readonly<Record<CaseState, number>>): Record<CaseList, number> {
  const count = (list: CaseList) => statesOf[list].reduce((sum, state) => sum + states[state], 0);
  const counts = caseList.options.map((list) => [list, count(list)]);
  return Object.fromEntries(counts) as Record<CaseList, number>;
}

function isIn(list: CaseList, state: KeptDetermination["state"]): boolean {
  return state !== "replaced" && statesOf[list].includes(state);
}

/** What a case was before is asked only where it changed since somebody decided: there are few of those. */
function historyOf(read: Read, facilityId: number, { state, caseId }: KeptDetermination): Promise<KeptDetermination[]> {
  return state === "changed" ? determinationsOfCase(read, facilityId, caseId) : Promise.resolve([]);
}
