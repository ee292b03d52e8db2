import { caseDecisions, caseLists, caseStates } from "../../../shared/case-words.ts";
import {
  organismGroups,
  signFindings,
  signNames,
  specimenKinds,
  specimenMethods,
  specimenStatuses,
  stepStatuses,
} from "../../../shared/culture-words.ts";
import { catalogue } from "./catalogue.ts";

/** The words of the contract's closed lists about cultures, signs and determinations. */
export const specimenKindText = catalogue("specimenKinds", specimenKinds);
export const specimenMethodText = catalogue("specimenMethods", specimenMethods);
export const specimenStatusText = catalogue("specimenStatuses", specimenStatuses);
export const organismGroupText = catalogue("organismGroups", organismGroups);
export const signText = catalogue("signNames", signNames);
export const findingText = catalogue("signFindings", signFindings);
export const stepStatusText = catalogue("stepStatuses", stepStatuses);
export const caseStateText = catalogue("caseStates", caseStates);
export const caseListText = catalogue("caseLists", caseLists);
export const caseDecisionText = catalogue("caseDecisions", caseDecisions);
