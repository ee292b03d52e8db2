import type { ReactNode } from "react";
import { absenceKinds } from "../../../../shared/vocabulary.ts";
import { PageLink } from "../../parts/page-link.tsx";
import type { PatientRecord, Stay, WardStay } from "../../parts/patient/patient-record.ts";
import { Said } from "../../parts/said.tsx";
import { useSession } from "../../parts/session.tsx";
import { entryTime } from "../../texts/entry-time.ts";
import { insertedWords } from "../../texts/inserted.ts";
import { patientsText, recordText } from "../../texts/patients.ts";
import { kindText } from "../../texts/words.ts";
import { StayCorrections } from "./correct-stay.tsx";
import { WardStayCorrections } from "./correct-ward-stay.tsx";
import { UncountedDays } from "./uncounted-days.tsx";

/** One stay: where the patient was, and the catheters. What was voided stays to be read. */
export function StaySection(props: { record: PatientRecord; stay: Stay; again: () => void }): ReactNode {
  const { record, stay, again } = props;
  const { time, may } = useSession();
  const { admittedAt, dischargedAt } = stay;
  const wardStays = record.wardStays
    .filter(({ stayId }) => stayId === stay.stayId)
    .sort((a, b) => a.startAt - b.startAt);
  const first = wardStays.find(({ voidReason }) => voidReason === null);
  const isToCorrect = may("record-care") && stay.voidReason === null;
  const id = `stay-${stay.stayId}`;
  return (
    <section aria-labelledby={id} className="card">
      <h2 id={id} className="first-heading">
        {recordText("stay", { number: stay.number })}
      </h2>
      <p>
        {dischargedAt === null
          ? recordText("stayFrom", { from: entryTime(time, stay, "admittedAt")(admittedAt) })
          : recordText("stayFromTo", {
              from: entryTime(time, stay, "admittedAt")(admittedAt),
              to: entryTime(time, stay, "dischargedAt")(dischargedAt),
            })}
        <Voided reason={stay.voidReason} />
      </p>
      <UncountedDays
        uncounted={record.uncounted.filter(({ stayId }) => stayId === stay.stayId)}
        {...{ stay, wardStays, again }}
      />
      {isToCorrect && <StayCorrections key={stay.version} {...{ stay, again }} />}
      <h3>{recordText("wards")}</h3>
      <ol>
        {wardStays.map((wardStay) => (
          <li key={wardStay.wardStayId}>
            <OnWard wardStay={wardStay} />
            {isToCorrect && wardStay.voidReason === null && (
              <WardStayCorrections key={wardStay.version} {...{ wardStay, again }} isFirst={wardStay === first} />
            )}
          </li>
        ))}
      </ol>
      <h3>{recordText("catheters")}</h3>
      <Catheters record={record} stayId={stay.stayId} />
    </section>
  );
}

function Voided({ reason }: { reason: string | null }): ReactNode {
  if (reason === null) return null;
  return (
    <>
      {" "}
      <Said>({recordText("voided", { reason })})</Said>
    </>
  );
}

function OnWard({ wardStay }: { wardStay: WardStay }): ReactNode {
  const { time, wardCode } = useSession();
  const { wardId, bed, startAt, endAt, absenceAfter, voidReason } = wardStay;
  const ward = wardCode(wardId);
  const from = entryTime(time, wardStay, "startAt")(startAt);
  return (
    <>
      <strong>{bed === null ? recordText("hereNoBed", { ward }) : recordText("here", { ward, bed })}</strong>{" "}
      {endAt === null
        ? recordText("fromOn", { from })
        : recordText("fromTo", { from, to: entryTime(time, wardStay, "endAt")(endAt) })}
      {absenceAfter !== null && <>, {recordText("away", { kind: absenceKinds[absenceAfter] })}</>}
      <Voided reason={voidReason} />
    </>
  );
}

function Catheters({ record, stayId }: { record: PatientRecord; stayId: number }): ReactNode {
  const { time } = useSession();
  const catheters = record.catheters.filter((catheter) => catheter.stayId === stayId);
  if (catheters.length === 0) return <p>{recordText("noCatheters")}</p>;
  return (
    <ul>
      {catheters.map((catheter) => {
        const { catheterId, kind, removedAt, removedAfterAt, voidReason } = catheter;
        const out = removedAt ?? removedAfterAt;
        return (
          <li key={catheterId}>
            <PageLink to={`/patients/${record.patient.patientId}/catheters/${catheterId}`}>
              {patientsText("catheter", {
                kind: kindText(kind),
                since: insertedWords(catheter, entryTime(time, catheter, "insertedAt")),
              })}
            </PageLink>
            ,{" "}
            {out === null
              ? recordText("inPlace")
              : recordText("removed", { when: entryTime(time, catheter, "removedAt")(out) })}
            <Voided reason={voidReason} />
          </li>
        );
      })}
    </ul>
  );
}
