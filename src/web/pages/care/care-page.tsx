import type { ReactNode } from "react";
import { Page } from "../../parts/page.tsx";
import { PatientHead } from "../../parts/patient/patient-head.tsx";
import { lastWardStay } from "../../parts/patient/patient-record.ts";
import { NoSuchEntry, WithPatient, WithPolicy } from "../../parts/patient/with-patient.tsx";
import type { PageProps } from "../../routes.ts";
import { careText } from "../../texts/care.ts";
import { CareForm } from "./care-form.tsx";
import { UrineForm } from "./urine-form.tsx";

/** The care check of a catheter by the unit's own bundle, and the amount of urine. */
export function CarePage({ found }: PageProps): ReactNode {
  const catheterId = Number(found.catheterId);
  return (
    <Page title={careText("title")}>
      <WithPatient patientId={Number(found.patientId)}>
        {(record) => {
          const catheter = record.catheters.find((one) => one.catheterId === catheterId);
          const place = catheter && lastWardStay(record, catheter.stayId);
          if (!catheter || !place) return <NoSuchEntry />;
          return (
            <>
              <PatientHead record={record} stayId={catheter.stayId} />
              <WithPolicy wardId={place.wardId}>
                {({ bundle }) => (
                  <CareForm {...{ catheterId, bundle }} patientId={record.patient.patientId} wardId={place.wardId} />
                )}
              </WithPolicy>
              <UrineForm catheterId={catheterId} />
            </>
          );
        }}
      </WithPatient>
    </Page>
  );
}
