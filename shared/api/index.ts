import { readAgreement } from "./agreements.ts";
import { listChanges, readAccess, searchAudit, verifyAudit } from "./audit.ts";
import { addBaseline, addOwnBaseline, listBaselines, listComparisons, setComparison } from "./baselines.ts";
import {
  confirmCase,
  disagreeWithCase,
  listCases,
  readCase,
  recordNoneFound,
  reopenCase,
  withdrawNoneFound,
} from "./cases.ts";
import {
  correctCatheter,
  insertCatheter,
  readCatheter,
  recordCatheterOnArrival,
  removeCatheter,
  voidCatheter,
} from "./catheters.ts";
import { correctSpecimen, readCultures, recordSpecimen, voidSpecimen } from "./cultures.ts";
import { readDailyCounts, recordDailyCount } from "./daily-counts.ts";
import { readDeterminations } from "./determinations.ts";
import { chooseReading, compareEditions, listEditions, listReadings, readEdition } from "./editions.ts";
import { readEvents, readMonthCultures } from "./events.ts";
import { readFacility, setCensus } from "./facility.ts";
import { correctFinding, recordFinding, voidFinding } from "./findings.ts";
import { dropImportLine, readImportLines, repairImportLine } from "./import-lines.ts";
import { addSource, changeSource, listSources, removeAlias } from "./import-sources.ts";
import { decideImport, listImports, readImport, receiveImport } from "./imports.ts";
import {
  applyLaboratoryWord,
  chooseLaboratoryWords,
  listLaboratoryWords,
  readOrganismName,
} from "./laboratory-words.ts";
import { readMonthDocument } from "./month-document.ts";
import {
  listChangedMonths,
  listSignedMonths,
  readMonthFigureSheet,
  readMonthFigures,
  readMonthSignatures,
  readSignedMonth,
  readSignedText,
  signMonth,
} from "./month-figures.ts";
import { readMonth, readMonthCare, readMonthGaps, readWardCare, readWardMonth } from "./months.ts";
import { cancelMove, correctWardStay, movePatient, recordAbsence, voidWardStay } from "./moves.ts";
import { confirmCatheter, correctNote, recordCareCheck, recordUrineOutput, reviewCatheter, voidNote } from "./notes.ts";
import { listOrganisms } from "./organisms.ts";
import { correctPatient, findPatients, mergePatients, readPatient, unmergePatients } from "./patients.ts";
import { listPeople, readMe } from "./people.ts";
import { listPolicies, readPolicy, setPolicy } from "./policies.ts";
import { readRound } from "./rounds.ts";
import { readSample } from "./samples.ts";
import { endWatch, listScope, voidWatch, watchWard } from "./scope.ts";
import { correctSign, recordSigns, voidSign } from "./signs.ts";
import { admitPatient, cancelDischarge, correctStay, dischargePatient, voidStay } from "./stays.ts";
import { readUncountedDays } from "./uncounted-days.ts";
import { compareTwo, compareWards, readComparisonDocument } from "./ward-comparisons.ts";
import { readWardDay } from "./ward-days.ts";
import { addWard, closeWard, describeWard, listWards, mergeWards, readWardHistory, voidWard } from "./wards.ts";
import { listDestinations, readWardPatients, readWardsNow } from "./wards-now.ts";

/** The whole API: every endpoint under the name by which documents and code call it. */
export const endpoints = {
  readMe,
  listPeople,
  readFacility,
  setCensus,
  listWards,
  readWardsNow,
  listDestinations,
  readWardPatients,
  addWard,
  describeWard,
  closeWard,
  mergeWards,
  voidWard,
  readWardHistory,
  listScope,
  watchWard,
  endWatch,
  voidWatch,
  readMonth,
  readWardMonth,
  readMonthCare,
  readMonthGaps,
  readMonthFigures,
  readMonthFigureSheet,
  readMonthSignatures,
  readSignedMonth,
  readSignedText,
  listSignedMonths,
  listChangedMonths,
  signMonth,
  readWardCare,
  readUncountedDays,
  readWardDay,
  readMonthDocument,
  compareWards,
  compareTwo,
  readComparisonDocument,
  readAgreement,
  readSample,
  readDailyCounts,
  recordDailyCount,
  correctPatient,
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
  readCultures,
  recordSpecimen,
  correctSpecimen,
  voidSpecimen,
  recordSigns,
  correctSign,
  voidSign,
  recordFinding,
  correctFinding,
  voidFinding,
  readDeterminations,
  listOrganisms,
  listCases,
  readCase,
  confirmCase,
  disagreeWithCase,
  reopenCase,
  recordNoneFound,
  withdrawNoneFound,
  readEvents,
  readMonthCultures,
  listEditions,
  readEdition,
  compareEditions,
  listReadings,
  chooseReading,
  readRound,
  readPolicy,
  listPolicies,
  setPolicy,
  listBaselines,
  addBaseline,
  addOwnBaseline,
  listComparisons,
  setComparison,
  listLaboratoryWords,
  chooseLaboratoryWords,
  applyLaboratoryWord,
  readOrganismName,
  listSources,
  addSource,
  changeSource,
  removeAlias,
  receiveImport,
  listImports,
  readImport,
  readImportLines,
  decideImport,
  repairImportLine,
  dropImportLine,
  listChanges,
  searchAudit,
  readAccess,
  verifyAudit,
} as const;
