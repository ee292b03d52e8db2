import type { ReactNode } from "react";
import { readPatient } from "../../../../shared/api/patients.ts";
import { readPolicy } from "../../../../shared/api/policies.ts";
import type { PolicyBody } from "../../../../shared/policy.ts";
import { patientText } from "../../texts/patient.ts";
import { WithWardNames } from "../session.tsx";
import { ShowAnswer } from "../show-answer.tsx";
import { useAnswer } from "../use-answer.ts";
import type { PatientRecord } from "./patient-record.ts";

/** Loads a patient's record, then shows what stands in it. `again` reads it anew. The view is recorded. */
export function WithPatient(props: {
  patientId: number;
  children: (record: PatientRecord, again: () => void) => ReactNode;
}): ReactNode {
  const asked = useAnswer(readPatient, { patientId: props.patientId });
  return (
    <ShowAnswer asked={asked} what={patientText("what")}>
      {(record) => (
        <WithWardNames wardIds={record.wardStays.map(({ wardId }) => wardId)}>
          {props.children(record, asked.again)}
        </WithWardNames>
      )}
    </ShowAnswer>
  );
}

/** Loads the policy that holds on a ward today. */
export function WithPolicy(props: { wardId: number; children: (policy: PolicyBody) => ReactNode }): ReactNode {
  const asked = useAnswer(readPolicy, { wardId: props.wardId });
  return (
    <ShowAnswer asked={asked} what={patientText("what")}>
      {({ body }) => props.children(body)}
    </ShowAnswer>
  );
}

/** What a page says whose address names an entry that the record does not have. */
export function NoSuchEntry(): ReactNode {
  return (
    <div role="alert" className="notice">
      <p>
        <strong>{patientText("gone")}.</strong> {patientText("goneDetail")}
      </p>
    </div>
  );
}
