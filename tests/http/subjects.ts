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
  readonly specimenId: number;
  readonly signId: number;
  readonly findingId: number;
  /** A determined culture: the number of its urine specimen. */
  readonly caseId: number;
  readonly noneFoundId: number;
  /** Files that were sent. */
  readonly importId: number;
  readonly scopeId: number;
  readonly sourceId: number;
  /** What that source calls a ward. */
  readonly aliasId: number;
  /** The instant around which things happen, as text with its offset. */
  readonly at: string;
  /** Makes the names of new records. */
  readonly fresh: () => string;
}
