import type { ReactNode } from "react";
import { patientText } from "../../texts/patient.ts";
import { Said } from "../said.tsx";
import { useSession } from "../session.tsx";
import { lastWardStay, type PatientRecord } from "./patient-record.ts";

/** Whose record this is: checked against the wristband before anything is recorded. */
export function PatientHead({ record, stayId }: { record: PatientRecord; stayId: number | null }): ReactNode {
  const { wardCode } = useSession();
  const place = stayId === null ? null : lastWardStay(record, stayId);
  return (
    <dl className="card who-card">
      <Fact label={patientText("patient")}>
        <strong>
          <Said>{record.patient.identifier}</Said>
        </strong>
      </Fact>
      {place && (
        <>
          <Fact label={patientText("ward")}>
            <Said>{wardCode(place.wardId)}</Said>
          </Fact>
          <Fact label={patientText("bed")}>{place.bed === null ? patientText("noBed") : <Said>{place.bed}</Said>}</Fact>
        </>
      )}
      <Fact label={patientText("born")}>{record.patient.birthDay ?? patientText("bornUnknown")}</Fact>
    </dl>
  );
}

function Fact({ label, children }: { label: string; children: ReactNode }): ReactNode {
  return (
    <div>
      <dt>{label}</dt>
      <dd>{children}</dd>
    </div>
  );
}
