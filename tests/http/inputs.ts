import type { endpoints } from "../../shared/api/index.ts";
import { censusTime, type Day, day, type Month, month } from "../../shared/day.ts";
import type { InputOf } from "../../shared/endpoint.ts";
import { defaultSourceSettings } from "../../shared/source-settings.ts";
import { defaultPolicy } from "../../src/domain/policy/default-policy.ts";
import { fullRecord } from "./full-record.ts";
import { movesWithFault } from "./import-work.ts";
import type { Subjects } from "./subjects.ts";

export { fullRecord } from "./full-record.ts";

type Inputs = { readonly [Name in keyof typeof endpoints]: (about: Subjects) => InputOf<(typeof endpoints)[Name]> };

const reason = "Written down on the wrong line";
const seenVersion = 1;
const ward = { name: "5 South", type: "medical", setting: "inpatient", beds: 24 } as const;

/** Where an invented baseline comes from. */
export const baselineOrigin = {
  ...{ name: "Alder Bay region", source: "Invented for this test", year: "2025", edition: "1" },
  ...{ definition: "Invented", population: "Invented hospitals" },
} as const;

/** A month from 2040 on, another one for each number that a name ends with. */
function monthOfItsOwn(name: string): Month {
  const number = Number(/\d+$/.exec(name)?.[0] ?? 0);
  return month.parse(`${2040 + Math.floor(number / 12)}-${String((number % 12) + 1).padStart(2, "0")}`);
}

/** A well-formed input for every endpoint: a new endpoint does not compile without one. */
export const inputs: Inputs = {
  readMe: () => ({}),
  listPeople: () => ({}),
  readFacility: () => ({}),
  setCensus: () => ({ fromDay: day.parse("2027-01-01"), time: censusTime.parse("06:00"), reason }),
  listWards: () => ({}),
  readWardsNow: () => ({}),
  listDestinations: () => ({}),
  readWardPatients: ({ wardId }) => ({ wardId }),
  addWard: ({ fresh }) => ({ ...ward, code: fresh(), openedDay: day.parse("2026-11-01") }),
  describeWard: ({ wardId }) => ({ ...ward, wardId, fromDay: day.parse("2026-11-25"), reason }),
  closeWard: ({ wardId }) => ({ wardId, closedDay: day.parse("2026-12-31") }),
  // Refused, so that the ward is there for the next request.
  mergeWards: ({ wardId }) => ({ wardId, intoWardId: wardId, reason }),
  voidWard: ({ wardId }) => ({ wardId, reason }),
  readWardHistory: ({ wardId }) => ({ wardId }),
  listScope: () => ({}),
  endWatch: ({ wardId, scopeId }) => ({ wardId, scopeId, toMonth: month.parse("2026-12"), reason, seenVersion }),
  voidWatch: ({ wardId, scopeId }) => ({ wardId, scopeId, reason, seenVersion }),
  watchWard: ({ wardId }) => ({ wardId, fromMonth: month.parse("2026-12"), toMonth: null, edition: "us-2024" }),
  readMonth: () => ({ month: month.parse("2026-11") }),
  readWardMonth: ({ wardId }) => ({ wardId, month: month.parse("2026-11") }),
  readMonthGaps: () => ({ month: month.parse("2026-11") }),
  readMonthCare: () => ({ month: month.parse("2026-11") }),
  readMonthFigures: () => ({ month: month.parse("2026-10") }),
  readMonthFigureSheet: () => ({ month: month.parse("2026-10") }),
  readMonthSignatures: () => ({ month: month.parse("2026-10") }),
  readSignedMonth: () => ({ month: month.parse("2026-10"), number: 1 }),
  readSignedText: () => ({ month: month.parse("2026-10"), number: 1 }),
  listSignedMonths: () => ({}),
  listChangedMonths: () => ({}),
  signMonth: () => ({ month: month.parse("2026-10"), seen: "0".repeat(64), replaces: 0, reason: null }),
  readUncountedDays: () => ({ month: month.parse("2026-11") }),
  readWardCare: ({ wardId }) => ({ wardId, month: month.parse("2026-11") }),
  readWardDay: ({ wardId }) => ({ wardId, day: day.parse("2026-11-04") }),
  readMonthDocument: () => ({ month: month.parse("2026-11") }),
  compareWards: () => ({}),
  readComparisonDocument: () => ({}),
  compareTwo: () => ({
    ...{ first: "3E", firstFrom: month.parse("2026-11"), firstTo: month.parse("2026-11") },
    ...{ second: "4N", secondFrom: month.parse("2026-10"), secondTo: month.parse("2026-11") },
  }),
  readAgreement: ({ wardId }) => ({ wardId, month: month.parse("2026-11") }),
  readSample: ({ wardId }) => ({ wardId, month: month.parse("2026-11"), weekday: "tuesday", kind: "general" }),
  readDailyCounts: ({ wardId }) => ({ wardId, month: month.parse("2026-11") }),
  recordDailyCount: ({ wardId }) => ({
    wardId,
    day: day.parse("2026-11-05"),
    patients: 9,
    catheters: 3,
    replaces: null,
  }),
  findPatients: () => ({ identifier: "ALDER-1001" }),
  readPatient: ({ patientId }) => ({ patientId }),
  correctPatient: ({ patientId }) => ({
    ...{ patientId, birthDay: day.parse("1950-03-01"), sex: null, seen: { birthDay: null, sex: null }, reason },
  }),
  mergePatients: ({ patientId, otherPatientId }) => ({ patientId, fromId: otherPatientId }),
  unmergePatients: ({ patientId }) => ({ patientId, mergeId: 2_000_000_000, reason }),
  admitPatient: ({ wardId, at, fresh }) => ({ wardId, identifier: fresh(), number: fresh(), admittedAt: at, bed: "7" }),
  dischargePatient: ({ stayId, at }) => ({ stayId, dischargedAt: at, seenVersion }),
  cancelDischarge: ({ stayId }) => ({ stayId, reason, seenVersion }),
  correctStay: ({ stayId }) => ({ stayId, disposition: "Home", reason, seenVersion }),
  voidStay: ({ stayId }) => ({ stayId, reason, seenVersion }),
  movePatient: ({ stayId, toWardId, at }) => ({ stayId, toWardId, movedAt: at }),
  recordAbsence: ({ stayId, at }) => ({ stayId, leftAt: at, kind: "leave" }),
  correctWardStay: ({ wardStayId }) => ({ wardStayId, bed: "9", reason, seenVersion }),
  cancelMove: ({ wardStayId }) => ({ wardStayId, reason, seenVersion }),
  voidWardStay: ({ wardStayId }) => ({ wardStayId, reason, seenVersion }),
  insertCatheter: ({ stayId, at }) => ({
    ...{ stayId, kind: "indwelling-urethral", insertedAt: at, indication: "perioperative", sizeFr: 14, balloonMl: 10 },
    record: fullRecord,
  }),
  recordCatheterOnArrival: ({ stayId, at }) => ({ stayId, kind: "indwelling-urethral", foundAt: at }),
  readCatheter: ({ catheterId }) => ({ catheterId }),
  removeCatheter: ({ catheterId, at }) => ({ catheterId, removedAt: at, seenVersion }),
  correctCatheter: ({ catheterId }) => ({ catheterId, sizeFr: 16, reason, seenVersion }),
  voidCatheter: ({ catheterId }) => ({ catheterId, reason, seenVersion }),
  reviewCatheter: ({ catheterId, at }) => ({ catheterId, at, outcome: "keep", indication: "perioperative" }),
  confirmCatheter: ({ catheterId, at }) => ({ catheterId, at }),
  recordCareCheck: ({ catheterId, at }) => ({ catheterId, at, items: { "closed-system": "kept" } }),
  recordUrineOutput: ({ catheterId, at }) => ({ catheterId, at, amountMl: 400 }),
  correctNote: ({ noteId, at }) => ({ noteId, at, reason, seenVersion }),
  voidNote: ({ noteId }) => ({ noteId, reason, seenVersion }),
  readCultures: ({ patientId }) => ({ patientId }),
  recordSpecimen: ({ patientId, at }) => ({
    ...{ patientId, kind: "urine", collectedAt: at, method: "culture", status: "final" },
    organisms: [{ name: "Escherichia coli", count: ">100000" }],
  }),
  correctSpecimen: ({ specimenId, at }) => ({ specimenId, collectedAt: at, status: "withdrawn", reason, seenVersion }),
  voidSpecimen: ({ specimenId }) => ({ specimenId, reason, seenVersion }),
  // Whatever stands in the place of a time goes out as it is, so that the server refuses it.
  recordSigns: ({ patientId, at }) => ({
    ...{ patientId, day: at.slice(0, 10) as Day },
    signs: [{ sign: "temperature", finding: "present", temperature: "38.4 °C", time: "09:00" }],
  }),
  correctSign: ({ signId, at }) => ({ signId, day: at.slice(0, 10) as Day, reason, seenVersion }),
  voidSign: ({ signId }) => ({ signId, reason, seenVersion }),
  recordFinding: ({ patientId, at }) => ({
    ...{ patientId, day: at.slice(0, 10) as Day, finding: "pyuria", present: true, cellsPerMm3: 25 },
  }),
  correctFinding: ({ findingId }) => ({ findingId, cellsPerMm3: 40, reason, seenVersion }),
  voidFinding: ({ findingId }) => ({ findingId, reason, seenVersion }),
  listCases: () => ({ list: "waiting" }),
  readCase: ({ caseId }) => ({ caseId }),
  confirmCase: ({ caseId }) => ({ caseId, seenVersion }),
  disagreeWithCase: ({ caseId }) => ({ caseId, reason, seenVersion }),
  reopenCase: ({ caseId }) => ({ caseId, reason, seenVersion }),
  recordNoneFound: ({ wardId }) => ({ wardId, month: month.parse("2026-10") }),
  withdrawNoneFound: ({ wardId, noneFoundId }) => ({ wardId, noneFoundId, reason, seenVersion }),
  readEvents: () => ({ first: day.parse("2026-11-01"), last: day.parse("2026-11-20") }),
  readMonthCultures: () => ({ month: month.parse("2026-11") }),
  listEditions: () => ({}),
  readEdition: () => ({ editionId: "us-2024" }),
  listReadings: () => ({ editionId: "us-2024" }),
  chooseReading: ({ fresh }) => ({
    ...{ editionId: "us-2024", option: "lookedFor", value: "every-day", reason },
    fromMonth: monthOfItsOwn(fresh()),
  }),
  compareEditions: () => ({
    ...{ editionId: "us-2024", otherId: "ecdc-2017" },
    ...{ first: day.parse("2026-11-01"), last: day.parse("2026-11-20") },
  }),
  listOrganisms: () => ({}),
  readDeterminations: ({ patientId }) => ({ patientId, family: "us" }),
  readRound: ({ wardId }) => ({ wardId }),
  readPolicy: ({ wardId }) => ({ wardId }),
  listPolicies: () => ({}),
  listBaselines: () => ({}),
  addOwnBaseline: () => ({
    ...{ name: "Own October", fromMonth: month.parse("2026-10"), toMonth: month.parse("2026-10") },
  }),
  addBaseline: () => ({ kind: "pooled", ...baselineOrigin, rows: [{ ward_type: "medical", rate_per_1000: "1.5" }] }),
  listComparisons: () => ({}),
  setComparison: () => ({
    ...{ fromMonth: month.parse("2026-10"), infectionBaselineId: null, utilizationBaselineId: null },
    ...{ goal: 0.8, limits: "mid-p", factors: [], reason, replaces: 0 },
  }),
  listLaboratoryWords: () => ({}),
  chooseLaboratoryWords: ({ fresh }) => ({ words: [{ column: "organism", wording: fresh(), choice: "bacterium" }] }),
  applyLaboratoryWord: () => ({ column: "organism", wording: "Odd thing" }),
  readOrganismName: () => ({ name: "Kleb pneumo" }),
  listSources: () => ({}),
  addSource: ({ fresh }) => ({ name: fresh(), settings: defaultSourceSettings }),
  changeSource: ({ sourceId, fresh }) => ({
    ...{ sourceId, name: fresh(), settings: { ...defaultSourceSettings, midnight: "no-hour" }, reason, seenVersion },
  }),
  removeAlias: ({ sourceId, aliasId }) => ({ sourceId, aliasId, reason, seenVersion }),
  receiveImport: ({ fresh }) => ({ files: [{ name: "moves.csv", text: movesWithFault(fresh) }] }),
  listImports: () => ({}),
  readImport: ({ importId }) => ({ importId }),
  readImportLines: ({ importId }) => ({ importId, kind: "refused" }),
  decideImport: ({ importId }) => ({ importId, decision: "apply", setAside: true }),
  repairImportLine: ({ importId, fresh }) => ({
    ...{ importId, file: "moves.csv", line: 3 },
    values: { stay: fresh(), patient: fresh(), ward: "3E", from: "2026-11-10T08:00", to: "2026-11-11T08:00" },
  }),
  dropImportLine: ({ importId }) => ({ importId, file: "moves.csv", line: 3, reason }),
  listChanges: () => ({ after: 0 }),
  searchAudit: () => ({ from: "2026-11-01T00:00:00Z" }),
  readAccess: ({ patientId }) => ({ patientId }),
  verifyAudit: () => ({}),
  setPolicy: () => ({ wardId: null, fromDay: day.parse("2026-11-20"), body: defaultPolicy, replaces: 0, reason }),
};
