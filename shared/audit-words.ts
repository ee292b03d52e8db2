import { z } from "zod";

/** Everything that the audit trail can say somebody did, in words. */
export const auditActions = {
  "add-person": "Added a person",
  "admit-patient": "Admitted a patient",
  "cancel-discharge": "Took a discharge back",
  "cancel-move": "Took a move back",
  "change-facility": "Changed the facility",
  "change-watch": "Changed what is watched",
  "correct-catheter": "Corrected a catheter",
  "correct-note": "Corrected a note",
  "correct-stay": "Corrected a stay",
  "correct-ward-stay": "Corrected time on a ward",
  "describe-ward": "Described a ward",
  "discharge-patient": "Discharged a patient",
  "find-patients": "Looked for a patient",
  import: "Imported files",
  "import-lines": "Stored lines of files",
  "insert-catheter": "Recorded a catheter",
  "merge-patients": "Merged two records",
  "move-patient": "Moved a patient",
  "rebuild-ledger": "Rebuilt the ledger",
  "record-absence": "Recorded time off the wards",
  "record-catheter-on-arrival": "Recorded a catheter found in place on arrival",
  "record-daily-count": "Recorded what was counted by hand",
  "record-insertion": "Recorded an insertion",
  "remove-catheter": "Recorded a removal",
  "search-audit": "Searched the audit trail",
  "set-policy": "Set a policy",
  "set-up-facility": "Set up the facility",
  "unmerge-patients": "Took a merge back",
  "view-access": "Looked at who saw a patient's record",
  "view-catheter": "Looked at a catheter",
  "view-patient": "Looked at a patient's record",
  "view-round": "Looked at a ward's round",
  "view-ward-care": "Looked at the rows behind a ward's figures",
  "view-ward-day": "Looked at the patients behind a ward day",
  "void-catheter": "Voided a catheter",
  "void-note": "Voided a note",
  "void-stay": "Voided a stay",
  "void-ward-stay": "Voided time on a ward",
  "watch-ward": "Put a ward under surveillance",
  "write-note": "Wrote a note about a catheter",
} as const;
export type AuditAction = keyof typeof auditActions;
export const auditAction = z.enum(Object.keys(auditActions) as AuditAction[]);

/** What only looked, and changed nothing. */
const looks: readonly string[] = [
  "find-patients",
  "search-audit",
  "view-access",
  "view-catheter",
  "view-patient",
  "view-round",
  "view-ward-care",
  "view-ward-day",
] satisfies AuditAction[];

/** The actions that changed something. */
export const changingActions = auditAction.options.filter((action) => !looks.includes(action));
