import type { ReactNode } from "react";
import type { readWardPatients } from "../../../../shared/api/wards-now.ts";
import type { OutputOf } from "../../../../shared/endpoint.ts";
import { absenceKinds } from "../../../../shared/vocabulary.ts";
import { PageLink } from "../../parts/page-link.tsx";
import { Said } from "../../parts/said.tsx";
import { type Session, useSession } from "../../parts/session.tsx";
import { entryTime } from "../../texts/entry-time.ts";
import { patientsText } from "../../texts/patients.ts";

type Left = OutputOf<typeof readWardPatients>["left"][number];

/** Who left a ward lately: their record may still have to be completed. */
export function LeftPatients({ left }: { left: readonly Left[] }): ReactNode {
  const session = useSession();
  return (
    <section aria-labelledby="left">
      <h2 id="left">{patientsText("left")}</h2>
      {left.length === 0 ? (
        <p>{patientsText("leftNone")}</p>
      ) : (
        <ul className="plain-list">
          {left.map((one) => (
            <li key={one.stayId} className="row">
              <Said>{one.identifier}</Said>
              <span>{leftWords(one, session)}</span>
              <PageLink to={`/patients/${one.patientId}`}>
                {patientsText("open")}
                <span className="unseen"> {one.identifier}</span>
              </PageLink>
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}

function leftWords(left: Left, { time, wardCode }: Session): string {
  const { kind, leftAt, toWardId, absence } = left;
  const when = entryTime(time, left, "leftAt")(leftAt);
  if (kind === "moved" && toWardId !== null) return patientsText("leftMoved", { ward: wardCode(toWardId), when });
  if (kind === "discharged") return patientsText("leftDischarged", { when });
  const why = absence === null ? patientsText("absenceUnknown") : absenceKinds[absence];
  return patientsText("leftAbsent", { when, kind: why.toLowerCase() });
}
