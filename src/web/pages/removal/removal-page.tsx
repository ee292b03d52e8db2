import type { ReactNode } from "react";
import { Page } from "../../parts/page.tsx";
import { PatientHead } from "../../parts/patient/patient-head.tsx";
import { lastWardStay } from "../../parts/patient/patient-record.ts";
import { NoSuchEntry, WithPatient } from "../../parts/patient/with-patient.tsx";
import type { PageProps } from "../../routes.ts";
import { removalText } from "../../texts/removal.ts";
import { RemovalForm } from "./removal-form.tsx";

/** The guided record of a removal. */
export function RemovalPage({ found }: PageProps): ReactNode {
  return (
    <Page title={removalText("title")}>
      <WithPatient patientId={Number(found.patientId)}>
        {(record) => {
          const catheter = record.catheters.find(({ catheterId }) => String(catheterId) === found.catheterId);
          if (!catheter) return <NoSuchEntry />;
          const wardId = lastWardStay(record, catheter.stayId)?.wardId ?? null;
          return (
            <>
              <PatientHead record={record} stayId={catheter.stayId} />
              <p>{removalText("caution")}</p>
              <RemovalForm catheter={catheter} patientId={record.patient.patientId} wardId={wardId} />
            </>
          );
        }}
      </WithPatient>
    </Page>
  );
}
