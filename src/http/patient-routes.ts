import type * as patients from "../../shared/api/patients.ts";
import { correctPatient } from "../usecases/record/correct-patient.ts";
import { findPatients } from "../usecases/record/find-patients.ts";
import { mergePatients, unmergePatients } from "../usecases/record/merge-patients.ts";
import { readPatient } from "../usecases/record/read-patient.ts";
import type { Routes } from "./routes.ts";

/** Endpoints of patients; what else the file of their contract exports is no endpoint. */
type Names = Exclude<keyof typeof patients, "hospitalNumber">;

/** Patients and their merges: endpoint to use case. */
export const patientRoutes: Pick<Routes, Names> = {
  findPatients: (act, input, reach) => findPatients(act, input, reach),
  readPatient: (act, input) => readPatient(act, input),
  mergePatients: (act, { patientId, fromId }) => mergePatients(act, { fromId, intoId: patientId }),
  unmergePatients: (act, input) => unmergePatients(act, input),
  correctPatient: (act, input) => correctPatient(act, input),
};
