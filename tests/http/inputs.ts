import type { endpoints } from "../../shared/api/index.ts";
import { day, month } from "../../shared/day.ts";
import type { InputOf } from "../../shared/endpoint.ts";
import { defaultPolicy } from "../../src/domain/policy/default-policy.ts";

/** The records that an input can be about. */
export interface Subjects {
  readonly wardId: number;
  /** Where a move goes. */
  readonly toWardId: number;
  readonly patientId: number;
  /** Another record that may be merged into the patient's. */
  readonly otherPatientId: number;
  readonly stayId: number;
  readonly wardStayId: number;
  readonly catheterId: number;
  readonly noteId: number;
  /** The instant around which things happen, as text with its offset. */
  readonly at: string;
  /** Makes the names of new records. */
  readonly fresh: () => string;
}

type Inputs = { readonly [Name in keyof typeof endpoints]: (about: Subjects) => InputOf<(typeof endpoints)[Name]> };

const reason = "Written down on the wrong line";
const seenVersion = 1;

/** An insertion's record with all that the built-in policy asks for. */
export const fullRecord = {
  orderChecked: true,
  twoIdentifiersChecked: true,
  handHygiene: true,
  packageIntactInDate: true,
  perinealCareDone: true,
  sterileTechniqueHeld: true,
  attempts: 1,
  securement: "device",
  bagBelowBladder: true,
  bagOffFloor: true,
  urineReturnedMl: 350,
  urineAppearance: "clear",
  patientResponse: "Tolerated well",
  teachingGiven: true,
  insertedBy: "registered-nurse",
  insertedIn: "ward",
} as const;

/** A well-formed input for every endpoint: a new endpoint does not compile without one. */
export const inputs: Inputs = {
  readMe: () => ({}),
  readFacility: () => ({}),
  listWards: () => ({}),
  readMonth: () => ({ month: month.parse("2026-11") }),
  readWardMonth: ({ wardId }) => ({ wardId, month: month.parse("2026-11") }),
  readMonthCare: () => ({ month: month.parse("2026-11") }),
  readWardCare: ({ wardId }) => ({ wardId, month: month.parse("2026-11") }),
  readWardDay: ({ wardId }) => ({ wardId, day: day.parse("2026-11-04") }),
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
  readRound: ({ wardId }) => ({ wardId }),
  readPolicy: ({ wardId }) => ({ wardId }),
  listPolicies: () => ({}),
  listChanges: () => ({ after: 0 }),
  searchAudit: () => ({ from: "2026-11-01T00:00:00Z" }),
  readAccess: ({ patientId }) => ({ patientId }),
  verifyAudit: () => ({}),
  setPolicy: () => ({ wardId: null, fromDay: day.parse("2026-11-20"), body: defaultPolicy, replaces: 0, reason }),
};
