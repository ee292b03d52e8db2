import type { ReactNode } from "react";
import { readWardPatients } from "../../../../shared/api/wards-now.ts";
import { Page } from "../../parts/page.tsx";
import { PageLink } from "../../parts/page-link.tsx";
import { useSession } from "../../parts/session.tsx";
import { ShowAnswer } from "../../parts/show-answer.tsx";
import { useAnswer } from "../../parts/use-answer.ts";
import { WardSelect } from "../../parts/ward-select.tsx";
import type { PageProps } from "../../routes.ts";
import { patientsText } from "../../texts/patients.ts";
import { UnknownPage } from "../unknown-page.tsx";
import { FindPatient } from "./find-patient.tsx";
import { LeftPatients } from "./left-patients.tsx";
import { PresentPatients } from "./present-patients.tsx";

/** Who is on a ward, who came today, who left lately. */
export function PatientsPage({ found }: PageProps): ReactNode {
  const { wards, may } = useSession();
  const ward = wards.find(({ wardId }) => String(wardId) === found.wardId);
  if (!ward) return <UnknownPage />;
  const { wardId, code } = ward;
  return (
    <Page title={patientsText("title", { ward: code })}>
      <div className="row on-screen">
        <WardSelect id="patients-ward" wardId={wardId} addressOf={(id) => `/wards/${id}/patients`} />
        {may("record-care") && (
          <PageLink to={`/wards/${wardId}/admission`} className="button first">
            {patientsText("admit")}
          </PageLink>
        )}
      </div>
      <FindPatient />
      <PatientsOf key={wardId} wardId={wardId} code={code} />
    </Page>
  );
}

function PatientsOf({ wardId, code }: { wardId: number; code: string }): ReactNode {
  const asked = useAnswer(readWardPatients, { wardId });
  return (
    <ShowAnswer asked={asked} what={patientsText("what", { ward: code })}>
      {({ patients, left }) => (
        <>
          <p className="small">{patientsText("viewed")}</p>
          <PresentPatients patients={patients} code={code} />
          <LeftPatients left={left} />
        </>
      )}
    </ShowAnswer>
  );
}
