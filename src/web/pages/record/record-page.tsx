import type { ReactNode } from "react";
import { Corrections } from "../../parts/corrections.tsx";
import { Page } from "../../parts/page.tsx";
import { PageLink } from "../../parts/page-link.tsx";
import { PatientHead } from "../../parts/patient/patient-head.tsx";
import { lastWardStay, type PatientRecord, type Stay } from "../../parts/patient/patient-record.ts";
import { WithPatient } from "../../parts/patient/with-patient.tsx";
import { WithNames } from "../../parts/people-names.tsx";
import { Said } from "../../parts/said.tsx";
import { useSession } from "../../parts/session.tsx";
import type { PageProps } from "../../routes.ts";
import { recordText } from "../../texts/patients.ts";
import { PatientCorrection } from "./correct-patient.tsx";
import { MergeSection } from "./merge-section.tsx";
import { MergesList } from "./merges-list.tsx";
import { StayActs } from "./stay-acts.tsx";
import { StaySection } from "./stay-section.tsx";

/** A patient's record: stays with their wards and catheters, and what can happen to the stay that lasts. */
export function RecordPage({ found }: PageProps): ReactNode {
  return (
    <Page title={recordText("title")}>
      <WithPatient patientId={Number(found.patientId)}>
        {(record, again) => <Shown {...{ record, again }} />}
      </WithPatient>
    </Page>
  );
}

function Shown({ record, again }: { record: PatientRecord; again: () => void }): ReactNode {
  const { may, wardCode, wards } = useSession();
  const stays = [...record.stays].sort((a, b) => b.admittedAt - a.admittedAt);
  const latest = stays.find(({ voidReason }) => voidReason === null) ?? null;
  const place = latest && lastWardStay(record, latest.stayId);
  return (
    <>
      <PatientHead record={record} stayId={latest?.stayId ?? null} />
      {may("record-care") && <PatientCorrection key={JSON.stringify(record.patient)} {...{ record, again }} />}
      <Before record={record} />
      <MergedInto record={record} />
      <p className="row on-screen">
        {place && wards.some(({ wardId }) => wardId === place.wardId) && (
          <PageLink to={`/wards/${place.wardId}/patients`}>
            {recordText("backToWard", { ward: wardCode(place.wardId) })}
          </PageLink>
        )}
        <PageLink to={`/patients/${record.patient.patientId}/cultures`}>{recordText("cultures")}</PageLink>
        {may("see-audit") && (
          <PageLink to={`/audit?patient=${record.patient.patientId}`}>{recordText("access")}</PageLink>
        )}
      </p>
      {latest && may("record-care") && <StayActs {...{ record, again }} stay={latest} />}
      {stays.map((stay: Stay) => (
        <StaySection key={stay.stayId} {...{ record, stay, again }} />
      ))}
      <MergesList {...{ record, again }} />
      {may("merge-patients") && <MergeSection {...{ record, again }} />}
    </>
  );
}

function MergedInto({ record }: { record: PatientRecord }): ReactNode {
  const { patient, survivorId, survivorIdentifier: number } = record;
  if (survivorId === patient.patientId) return null;
  return (
    <div className="notice">
      <p>
        <Said>{recordText("mergedInto", { number })}</Said>
      </p>
      <PageLink to={`/patients/${survivorId}`}>{recordText("toSurvivor", { number })}</PageLink>
    </div>
  );
}

/** What the record said of birth and sex before it was corrected. */
function Before({ record: { corrections } }: { record: PatientRecord }): ReactNode {
  if (corrections.length === 0) return null;
  return <WithNames what={recordText("title")}>{(nameOf) => <Corrections {...{ corrections, nameOf }} />}</WithNames>;
}
