import { readAgreement } from "./agreements.ts";
import { listChanges, readAccess, searchAudit, verifyAudit } from "./audit.ts";
import {
  correctCatheter,
  insertCatheter,
  readCatheter,
  recordCatheterOnArrival,
  removeCatheter,
  voidCatheter,
} from "./catheters.ts";
import { readDailyCounts, recordDailyCount } from "./daily-counts.ts";
import { readFacility } from "./facility.ts";
import { readMonth, readMonthCare, readWardCare, readWardMonth } from "./months.ts";
import { cancelMove, correctWardStay, movePatient, recordAbsence, voidWardStay } from "./moves.ts";
import { confirmCatheter, correctNote, recordCareCheck, recordUrineOutput, reviewCatheter, voidNote } from "./notes.ts";
import { findPatients, mergePatients, readPatient, unmergePatients } from "./patients.ts";
import { readMe } from "./people.ts";
import { listPolicies, readPolicy, setPolicy } from "./policies.ts";
import { readRound } from "./rounds.ts";
import { readSample } from "./samples.ts";
import { admitPatient, cancelDischarge, correctStay, dischargePatient, voidStay } from "./stays.ts";
import { readWardDay } from "./ward-days.ts";
import { listWards } from "./wards.ts";

/** Where the API begins. A change that breaks a client gets a new number. */
export const apiBase = "/api/v1";

/** The whole API: every endpoint under the name by which documents and code call it. */
export const endpoints = {
  readMe,
  readFacility,
  listWards,
  readMonth,
  readWardMonth,
  readMonthCare,
  readWardCare,
  readWardDay,
  readAgreement,
  readSample,
  readDailyCounts,
  recordDailyCount,
  findPatients,
  readPatient,
  mergePatients,
  unmergePatients,
  admitPatient,
  dischargePatient,
  cancelDischarge,
  correctStay,
  voidStay,
  movePatient,
  recordAbsence,
  correctWardStay,
  cancelMove,
  voidWardStay,
  insertCatheter,
  recordCatheterOnArrival,
  readCatheter,
  removeCatheter,
  correctCatheter,
  voidCatheter,
  reviewCatheter,
  confirmCatheter,
  recordCareCheck,
  recordUrineOutput,
  correctNote,
  voidNote,
  readRound,
  readPolicy,
  listPolicies,
  setPolicy,
  listChanges,
  searchAudit,
  readAccess,
  verifyAudit,
} as const;
