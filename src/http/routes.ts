import type { endpoints } from "../../shared/api/index.ts";
import type { Day } from "../../shared/day.ts";
import type { Endpoint, InputOf, OutputOf } from "../../shared/endpoint.ts";
import { dayNumber } from "../domain/days/day-number.ts";
import type { Act } from "../usecases/act.ts";
import { addWard } from "../usecases/add-ward.ts";
import { admitPatient } from "../usecases/admit-patient.ts";
import { applyWord } from "../usecases/apply-word.ts";
import { cancelMove } from "../usecases/cancel-move.ts";
import { changeCatheter } from "../usecases/change-catheter.ts";
import { setCensus } from "../usecases/change-facility.ts";
import { chooseLaboratoryWords } from "../usecases/choose-words.ts";
import { closeWard } from "../usecases/close-ward.ts";
import { compareTwo, compareWards, readComparisonDocument } from "../usecases/compare-wards.ts";
import { correctStay, correctWardStay } from "../usecases/correct-entry.ts";
import { correctNote } from "../usecases/correct-note.ts";
import { describeWard } from "../usecases/describe-ward.ts";
import { cancelDischarge, dischargePatient } from "../usecases/discharge-patient.ts";
import { listChanges } from "../usecases/list-changes.ts";
import { listDestinations } from "../usecases/list-destinations.ts";
import { listPeople } from "../usecases/list-people.ts";
import { listPolicies } from "../usecases/list-policies.ts";
import { listScope } from "../usecases/list-scope.ts";
import { listWards } from "../usecases/list-wards.ts";
import { listLaboratoryWords, readOrganismName } from "../usecases/list-words.ts";
import { mergeWards } from "../usecases/merge-wards.ts";
import { movePatient } from "../usecases/move-patient.ts";
import type { Reach } from "../usecases/reach.ts";
import { readAgreement } from "../usecases/read-agreement.ts";
import { readCatheter } from "../usecases/read-catheter.ts";
import { readDailyCounts } from "../usecases/read-daily-counts.ts";
import { readFacility } from "../usecases/read-facility.ts";
import { readMe } from "../usecases/read-me.ts";
import { readMonthDocument } from "../usecases/read-month-document.ts";
import { readPolicy } from "../usecases/read-policy.ts";
import { readRound } from "../usecases/read-round.ts";
import { readSample } from "../usecases/read-sample.ts";
import { readUncountedDays } from "../usecases/read-uncounted-days.ts";
import { readWardHistory } from "../usecases/read-ward-history.ts";
import { readWardPatients } from "../usecases/read-ward-patients.ts";
import { readWardsNow } from "../usecases/read-wards-now.ts";
import { recordAbsence } from "../usecases/record-absence.ts";
import { recordDailyCount } from "../usecases/record-daily-count.ts";
import { recordInsertion, recordOnArrival } from "../usecases/record-insertion.ts";
import { recordRemoval } from "../usecases/record-removal.ts";
import { reportCare, reportWardCare } from "../usecases/report-care.ts";
import { reportGaps } from "../usecases/report-gaps.ts";
import { reportMonth } from "../usecases/report-month.ts";
import { reportWardDay } from "../usecases/report-ward-day.ts";
import { reportWardDays } from "../usecases/report-ward-days.ts";
import { readAccessList, searchAudit } from "../usecases/search-audit.ts";
import { setPolicy } from "../usecases/set-policy.ts";
import { verifyAudit } from "../usecases/verify-audit.ts";
import { voidCatheter, voidStay, voidWardStay } from "../usecases/void-entry.ts";
import { voidNote } from "../usecases/void-note.ts";
import { voidWard } from "../usecases/void-ward.ts";
import { changeWatch, watchWard } from "../usecases/watch-ward.ts";
import { writeNote } from "../usecases/write-note.ts";
import { caseRoutes } from "./case-routes.ts";
import { withInstants } from "./charted-times.ts";
import { cultureRoutes } from "./culture-routes.ts";
import { importRoutes } from "./import-routes.ts";
import { monthRoutes } from "./month-routes.ts";
import { patientRoutes } from "./patient-routes.ts";

/**
 * What answers an endpoint. The input was read by its contract, the person may do this, and a ward or record that is
 * named is within their reach; `reach` matters to endpoints of many wards.
 */
export type Route<E extends Endpoint> = (act: Act, input: InputOf<E>, reach: Reach) => Promise<OutputOf<E>>;

export type Routes = { readonly [Name in keyof typeof endpoints]: Route<(typeof endpoints)[Name]> };

/** Endpoint to use case, each on its lines. An endpoint without a line here does not compile. */
export const routes: Routes = {
  readMe: (act) => readMe(act),
  listPeople: (act) => listPeople(act),
  readFacility: (act) => readFacility(act),
  setCensus: (act, input) => setCensus(act, input),
  listWards: (act, _input, reach) => listWards(act, reach),
  readWardsNow: (act, _input, reach) => readWardsNow(act, reach),
  listDestinations: (act) => listDestinations(act),
  readWardPatients: (act, input) => readWardPatients(act, input),
  addWard: (act, { openedDay, ...input }) => addWard(act, { ...input, openedDay: dayOrNull(openedDay) }),
  describeWard: (act, { fromDay, ...input }) => describeWard(act, { ...input, fromDay: dayNumber(fromDay) }),
  closeWard: (act, { closedDay, ...input }) => closeWard(act, { ...input, closedDay: dayOrNull(closedDay) }),
  mergeWards: (act, input) => mergeWards(act, input),
  voidWard: (act, input) => voidWard(act, input),
  readWardHistory: (act, input) => readWardHistory(act, input),
  listScope: (act, _input, reach) => listScope(act, reach),
  watchWard: (act, input) => watchWard(act, input),
  endWatch: (act, input) => changeWatch(act, input),
  voidWatch: (act, input) => changeWatch(act, { ...input, voided: true }),
  readMonth: (act, { month }, reach) => reportMonth(act, { month, ...reach }),
  readWardMonth: (act, input) => reportWardDays(act, input),
  readMonthCare: (act, { month }, reach) => reportCare(act, { month, ...reach }),
  readMonthGaps: (act, { month }, reach) => reportGaps(act, { month, ...reach }),
  readWardCare: (act, input) => reportWardCare(act, input),
  readUncountedDays: (act, { month }, reach) => readUncountedDays(act, { month, ...reach }),
  readWardDay: (act, input) => reportWardDay(act, input),
  readMonthDocument: (act, input, reach) => readMonthDocument(act, { ...input, ...reach }),
  compareWards: (act, input) => compareWards(act, input),
  readComparisonDocument: (act, input) => readComparisonDocument(act, input),
  compareTwo: (act, input) => compareTwo(act, input),
  readAgreement: (act, input) => readAgreement(act, input),
  readSample: (act, input) => readSample(act, input),
  readDailyCounts: (act, input) => readDailyCounts(act, input),
  recordDailyCount: (act, { day, ...input }) => recordDailyCount(act, { ...input, day: dayNumber(day) }),
  admitPatient: async (act, input) => {
    const { identifier, birthDay, sex, ...stay } = await withInstants(act, input, ["admittedAt"]);
    const born = birthDay == null ? null : dayNumber(birthDay);
    return admitPatient(act, { ...stay, patient: { identifier, birthDay: born, sex: sex ?? null } });
  },
  dischargePatient: async (act, input) => dischargePatient(act, await withInstants(act, input, ["dischargedAt"])),
  cancelDischarge: (act, input) => cancelDischarge(act, input),
  correctStay: async (act, input) => {
    const { stayId, reason, seenVersion, marks, ...changes } = await withInstants(act, input, times.stay, {
      orDay: times.stay,
    });
    return correctStay(act, { stayId, reason, seenVersion, marks, changes });
  },
  voidStay: (act, input) => voidStay(act, input),
  movePatient: async (act, input) => {
    const { toWardId, ...move } = await withInstants(act, input, ["movedAt"], { fields: { movedAt: "startAt" } });
    return movePatient(act, { ...move, wardId: toWardId });
  },
  recordAbsence: async (act, input) =>
    recordAbsence(act, await withInstants(act, input, ["leftAt", "backAt"], { fields: times.absence })),
  correctWardStay: async (act, input) => {
    const { wardStayId, reason, seenVersion, marks, ...given } = await withInstants(act, input, times.wardStay, {
      orDay: times.wardStay,
    });
    const { toWardId, ...changes } = given;
    const moved = toWardId === undefined ? changes : { ...changes, wardId: toWardId };
    return correctWardStay(act, { wardStayId, reason, seenVersion, marks, changes: moved });
  },
  cancelMove: (act, input) => cancelMove(act, input),
  voidWardStay: (act, input) => voidWardStay(act, input),
  insertCatheter: async (act, input) => recordInsertion(act, await withInstants(act, input, ["insertedAt"])),
  recordCatheterOnArrival: async (act, input) =>
    recordOnArrival(act, await withInstants(act, input, ["foundAt"], { fields: { foundAt: "lastSeenAt" } })),
  readCatheter: (act, input) => readCatheter(act, input),
  removeCatheter: async (act, input) => recordRemoval(act, await withInstants(act, input, times.removal)),
  correctCatheter: async (act, input) => {
    const given = await withInstants(act, input, times.catheter, { orDay: times.catheterDays });
    const { catheterId, reason, seenVersion, confirm = [], marks, ...changes } = given;
    return changeCatheter(act, { catheterId, reason, seenVersion, confirm, marks, changes });
  },
  voidCatheter: (act, input) => voidCatheter(act, input),
  reviewCatheter: async (act, input) => writeNote(act, { ...(await withInstants(act, input, ["at"])), kind: "review" }),
  confirmCatheter: async (act, input) =>
    writeNote(act, { ...(await withInstants(act, input, ["at"])), kind: "confirmation" }),
  recordCareCheck: async (act, input) =>
    writeNote(act, { ...(await withInstants(act, input, ["at"])), kind: "care-check" }),
  recordUrineOutput: async (act, input) =>
    writeNote(act, { ...(await withInstants(act, input, ["at"])), kind: "urine-output" }),
  correctNote: async (act, input) => {
    const given = await withInstants(act, input, ["at"]);
    const { noteId, reason, seenVersion, confirm = [], marks, ...changes } = given;
    return correctNote(act, { noteId, reason, seenVersion, confirm, marks, changes });
  },
  voidNote: (act, input) => voidNote(act, input),
  ...cultureRoutes,
  ...caseRoutes,
  ...monthRoutes,
  ...patientRoutes,
  readRound: (act, input) => readRound(act, input),
  readPolicy: (act, input) => readPolicy(act, input),
  listPolicies: (act, _input, reach) => listPolicies(act, reach),
  listLaboratoryWords: (act) => listLaboratoryWords(act),
  chooseLaboratoryWords: (act, input) => chooseLaboratoryWords(act, input),
  applyLaboratoryWord: (act, input) => applyWord(act, input),
  readOrganismName: (act, input) => readOrganismName(act, input),
  ...importRoutes,
  listChanges: (act, input, reach) => listChanges(act, input, reach),
  searchAudit: (act, input) => searchAudit(act, input),
  readAccess: (act, input) => readAccessList(act, input),
  verifyAudit: (act) => verifyAudit(act.store),
  setPolicy: (act, { fromDay, ...input }) => setPolicy(act, { ...input, fromDay: dayNumber(fromDay) }),
};

function dayOrNull(text: Day | null): number | null {
  return text === null ? null : dayNumber(text);
}

const times = {
  stay: ["admittedAt", "dischargedAt"],
  wardStay: ["startAt", "endAt"],
  absence: { leftAt: "endAt", backAt: "startAt" },
  removal: ["removedAt", "removedAfterAt", "removedBeforeAt"],
  catheterDays: ["insertedAt", "removedAt", "lastSeenAt"],
  catheter: ["insertedAt", "removedAt", "removedAfterAt", "removedBeforeAt", "lastSeenAt"],
} as const;
