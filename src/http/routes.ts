import type { endpoints } from "../../shared/api/index.ts";
import type { Day } from "../../shared/day.ts";
import type { Endpoint, InputOf, OutputOf } from "../../shared/endpoint.ts";
import { dayNumber } from "../domain/days/day-number.ts";
import type { Act } from "../usecases/act.ts";
import { listChanges } from "../usecases/audit/list-changes.ts";
import { readSample } from "../usecases/audit/read-sample.ts";
import { readAccess, searchAudit } from "../usecases/audit/search-audit.ts";
import { verifyAudit } from "../usecases/audit/verify-audit.ts";
import { compareTwo, compareWards, readComparisonDocument } from "../usecases/months/compare-wards.ts";
import { readAgreement } from "../usecases/months/read-agreement.ts";
import { readDailyCounts } from "../usecases/months/read-daily-counts.ts";
import { readMonth } from "../usecases/months/read-month.ts";
import { readMonthCare, readWardCare } from "../usecases/months/read-month-care.ts";
import { readMonthDocument } from "../usecases/months/read-month-document.ts";
import { readMonthGaps } from "../usecases/months/read-month-gaps.ts";
import { readUncountedDays } from "../usecases/months/read-uncounted-days.ts";
import { readWardDay } from "../usecases/months/read-ward-day.ts";
import { readWardMonth } from "../usecases/months/read-ward-month.ts";
import { recordDailyCount } from "../usecases/months/record-daily-count.ts";
import type { Reach } from "../usecases/reach.ts";
import { admitPatient } from "../usecases/record/admit-patient.ts";
import { cancelMove } from "../usecases/record/cancel-move.ts";
import { changeCatheter } from "../usecases/record/change-catheter.ts";
import { correctStay, correctWardStay } from "../usecases/record/correct-entry.ts";
import { correctNote } from "../usecases/record/correct-note.ts";
import { cancelDischarge, dischargePatient } from "../usecases/record/discharge-patient.ts";
import { listDestinations } from "../usecases/record/list-destinations.ts";
import { movePatient } from "../usecases/record/move-patient.ts";
import { readCatheter } from "../usecases/record/read-catheter.ts";
import { readRound } from "../usecases/record/read-round.ts";
import { readWardPatients } from "../usecases/record/read-ward-patients.ts";
import { readWardsNow } from "../usecases/record/read-wards-now.ts";
import { recordAbsence } from "../usecases/record/record-absence.ts";
import { recordCatheterOnArrival, recordInsertion } from "../usecases/record/record-insertion.ts";
import { recordRemoval } from "../usecases/record/record-removal.ts";
import { voidCatheter, voidStay, voidWardStay } from "../usecases/record/void-entry.ts";
import { voidNote } from "../usecases/record/void-note.ts";
import { writeNote } from "../usecases/record/write-note.ts";
import { applyLaboratoryWord } from "../usecases/settings/apply-laboratory-word.ts";
import { setCensus } from "../usecases/settings/change-facility.ts";
import { chooseLaboratoryWords } from "../usecases/settings/choose-words.ts";
import { listPeople } from "../usecases/settings/list-people.ts";
import { listPolicies } from "../usecases/settings/list-policies.ts";
import { listScope } from "../usecases/settings/list-scope.ts";
import { listLaboratoryWords, readOrganismName } from "../usecases/settings/list-words.ts";
import { readFacility } from "../usecases/settings/read-facility.ts";
import { readMe } from "../usecases/settings/read-me.ts";
import { readPolicy } from "../usecases/settings/read-policy.ts";
import { setPolicy } from "../usecases/settings/set-policy.ts";
import { changeWatch, watchWard } from "../usecases/settings/watch-ward.ts";
import { addWard } from "../usecases/wards/add-ward.ts";
import { closeWard } from "../usecases/wards/close-ward.ts";
import { describeWard } from "../usecases/wards/describe-ward.ts";
import { listWards } from "../usecases/wards/list-wards.ts";
import { mergeWards } from "../usecases/wards/merge-wards.ts";
import { readWardHistory } from "../usecases/wards/read-ward-history.ts";
import { voidWard } from "../usecases/wards/void-ward.ts";
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
  readMonth: (act, { month }, reach) => readMonth(act, { month, ...reach }),
  readWardMonth: (act, input) => readWardMonth(act, input),
  readMonthCare: (act, { month }, reach) => readMonthCare(act, { month, ...reach }),
  readMonthGaps: (act, { month }, reach) => readMonthGaps(act, { month, ...reach }),
  readWardCare: (act, input) => readWardCare(act, input),
  readUncountedDays: (act, { month }, reach) => readUncountedDays(act, { month, ...reach }),
  readWardDay: (act, input) => readWardDay(act, input),
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
    recordCatheterOnArrival(act, await withInstants(act, input, ["foundAt"], { fields: { foundAt: "lastSeenAt" } })),
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
  applyLaboratoryWord: (act, input) => applyLaboratoryWord(act, input),
  readOrganismName: (act, input) => readOrganismName(act, input),
  ...importRoutes,
  listChanges: (act, input, reach) => listChanges(act, input, reach),
  searchAudit: (act, input) => searchAudit(act, input),
  readAccess: (act, input) => readAccess(act, input),
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
