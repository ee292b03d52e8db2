import type { ReactNode } from "react";
import type { PolicyBody } from "../../../../shared/policy.ts";
import { PatientHead } from "./patient-head.tsx";
import { lastWardStay, type PatientRecord } from "./patient-record.ts";
import { NoSuchEntry, WithPatient, WithPolicy } from "./with-patient.tsx";

/** What stands on a page about a stay. */
export interface StayShown {
  readonly record: PatientRecord;
  readonly stayId: number;
  /** Where the patient is, or was last. */
  readonly wardId: number;
  /** What that ward wants done. */
  readonly policy: PolicyBody;
}

/** A page about one stay, named by the address: whose it is, a line of explanation if there is one, then what is to be done. */
export function StayPage(props: {
  found: Readonly<Record<string, string>>;
  lead?: ReactNode;
  children: (shown: StayShown) => ReactNode;
}): ReactNode {
  const { found, lead, children } = props;
  const stayId = Number(found.stayId);
  return (
    <WithPatient patientId={Number(found.patientId)}>
      {(record) => {
        const place = lastWardStay(record, stayId);
        if (!place) return <NoSuchEntry />;
        const { wardId } = place;
        return (
          <>
            <PatientHead record={record} stayId={stayId} />
            {lead}
            <WithPolicy wardId={wardId}>{(policy) => children({ record, stayId, wardId, policy })}</WithPolicy>
          </>
        );
      }}
    </WithPatient>
  );
}
