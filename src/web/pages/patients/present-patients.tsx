import type { ReactNode } from "react";
import type { readWardPatients } from "../../../../shared/api/wards-now.ts";
import type { OutputOf } from "../../../../shared/endpoint.ts";
import { PageLink } from "../../parts/page-link.tsx";
import { Said } from "../../parts/said.tsx";
import { useSession } from "../../parts/session.tsx";
import { entryTime } from "../../texts/entry-time.ts";
import { insertedWords } from "../../texts/inserted.ts";
import { patientsText } from "../../texts/patients.ts";
import { roundText } from "../../texts/round.ts";
import { kindText } from "../../texts/words.ts";

type Present = OutputOf<typeof readWardPatients>["patients"][number];

/** The patients of a ward by bed, with their catheters and what can be recorded of them. */
export function PresentPatients({ patients, code }: { patients: readonly Present[]; code: string }): ReactNode {
  if (patients.length === 0) return <p className="notice">{patientsText("none", { ward: code })}</p>;
  return (
    <>
      <h2>{patientsText("list")}</h2>
      <ul className="plain-list">
        {patients.map((patient) => (
          <li key={patient.stayId}>
            <PatientCard patient={patient} />
          </li>
        ))}
      </ul>
    </>
  );
}

function PatientCard({ patient }: { patient: Present }): ReactNode {
  const { may, time, wardCode } = useSession();
  const { patientId, stayId, bed, identifier, since, cameFrom, arrivedToday, bedHeld } = patient;
  const stay = `/patients/${patientId}/stays/${stayId}`;
  return (
    <article className="card patient-card" aria-label={identifier}>
      <p className="round-who">
        <span className="bed">{bed === null ? roundText("noBed") : roundText("bed", { bed })}</span>
        <Said>{identifier}</Said>
        {arrivedToday && <span className="tag">{patientsText("today")}</span>}
        {bedHeld && <span className="tag">{patientsText("bedHeld")}</span>}
      </p>
      <p className="small">
        {patientsText("since", { when: entryTime(time, patient, "since")(since) })},{" "}
        {cameFrom === null ? patientsText("admitted") : patientsText("from", { ward: wardCode(cameFrom) })}
      </p>
      <Catheters patient={patient} />
      {may("record-care") && (
        <p className="row">
          <PageLink to={`${stay}/insertion`} className="button">
            {patientsText("insert")}
          </PageLink>
          <PageLink to={`${stay}/arrival`} className="button">
            {patientsText("onArrival")}
          </PageLink>
          <PageLink to={`/patients/${patientId}`} className="button">
            {patientsText("record")}
          </PageLink>
        </p>
      )}
    </article>
  );
}

function Catheters({ patient }: { patient: Present }): ReactNode {
  const { time } = useSession();
  const { patientId, catheters } = patient;
  if (catheters.length === 0) return <p>{patientsText("noCatheter")}</p>;
  return (
    <ul className="plain-list">
      {catheters.map((catheter) => (
        <li key={catheter.catheterId}>
          <PageLink to={`/patients/${patientId}/catheters/${catheter.catheterId}`}>
            {patientsText("catheter", {
              kind: kindText(catheter.kind),
              since: insertedWords(catheter, entryTime(time, catheter, "insertedAt")),
            })}
          </PageLink>
        </li>
      ))}
    </ul>
  );
}
