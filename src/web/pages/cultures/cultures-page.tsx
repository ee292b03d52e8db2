import type { ReactNode } from "react";
import { readCultures } from "../../../../shared/api/cultures.ts";
import { OpensOnce } from "../../parts/opens-once.tsx";
import { Page } from "../../parts/page.tsx";
import { PageLink } from "../../parts/page-link.tsx";
import { PatientHead } from "../../parts/patient/patient-head.tsx";
import { WithPatient } from "../../parts/patient/with-patient.tsx";
import { type NameOf, WithNames } from "../../parts/people-names.tsx";
import { useSession } from "../../parts/session.tsx";
import { ShowAnswer } from "../../parts/show-answer.tsx";
import { useAnswer } from "../../parts/use-answer.ts";
import { useHashFocus } from "../../parts/use-hash-focus.ts";
import type { PageProps } from "../../routes.ts";
import { culturesText } from "../../texts/cultures.ts";
import { findingsText } from "../../texts/findings.ts";
import { reviewsText } from "../../texts/reviews.ts";
import type { Cultures } from "./culture-rows.ts";
import { FindingEntry } from "./finding-entry.tsx";
import { FindingForm } from "./finding-form.tsx";
import { ReviewEntry, signGroups } from "./review-entry.tsx";
import { ReviewForm } from "./review-form.tsx";
import { SignEntry } from "./sign-entry.tsx";
import { SignsForm } from "./signs-form.tsx";
import { SpecimenEntry } from "./specimen-entry.tsx";
import { SpecimenForm } from "./specimen-form.tsx";

/** A patient's specimens and signs: recorded, corrected, voided. An entry that the address names is gone to. */
export function CulturesPage({ found }: PageProps): ReactNode {
  const patientId = Number(found.patientId);
  const { may } = useSession();
  const cultures = useAnswer(readCultures, { patientId });
  return (
    <Page title={culturesText("title")}>
      <WithPatient patientId={patientId}>
        {(record) => <PatientHead record={record} stayId={record.stays.at(-1)?.stayId ?? null} />}
      </WithPatient>
      <p className="row on-screen">
        <PageLink to={`/patients/${patientId}`}>{culturesText("toRecord")}</PageLink>
        {may("judge-cases") && <PageLink to="/cases">{culturesText("waiting")}</PageLink>}
      </p>
      <p className="lead">{culturesText("lead")}</p>
      <Recording
        {...{ patientId, again: cultures.again, cultures: cultures.state === "answered" ? cultures.value : null }}
      />
      <ShowAnswer asked={cultures} what={culturesText("what")}>
        {(value) => (
          <WithNames what={culturesText("what")}>
            {(nameOf) => <Entries cultures={value} nameOf={nameOf} again={cultures.again} />}
          </WithNames>
        )}
      </ShowAnswer>
    </Page>
  );
}

interface RecordingProps {
  readonly patientId: number;
  readonly again: () => void;
  readonly cultures: Cultures | null;
}

function Recording({ patientId, again, cultures }: RecordingProps): ReactNode {
  const { may } = useSession();
  if (!may("record-care")) return null;
  return (
    <div className="on-screen">
      <details className="card">
        <summary>{culturesText("recordSpecimen")}</summary>
        <SpecimenForm {...{ patientId, again }} />
      </details>
      <details className="card">
        <summary>{culturesText("recordSigns")}</summary>
        <SignsForm {...{ patientId, again }} />
      </details>
      {cultures && (
        <OpensOnce className="card" summary={reviewsText("record")}>
          <ReviewForm {...{ patientId, again, cultures }} />
        </OpensOnce>
      )}
      <OpensOnce className="card" summary={findingsText("record")}>
        <FindingForm {...{ patientId, again }} />
      </OpensOnce>
    </div>
  );
}

function Entries(props: { cultures: Cultures; nameOf: NameOf; again: () => void }): ReactNode {
  const { cultures, nameOf, again } = props;
  const specimens = [...cultures.specimens].reverse();
  const signs = [...cultures.signs].reverse();
  useHashFocus();
  return (
    <>
      <section aria-labelledby="specimens">
        <h2 id="specimens">{culturesText("specimens")}</h2>
        {specimens.length === 0 && <p>{culturesText("specimensNone")}</p>}
        <ol className="plain-list" reversed>
          {specimens.map((specimen) => (
            <li key={specimen.specimenId} className="card">
              <SpecimenEntry key={specimen.version} {...{ cultures, specimen, nameOf, again }} />
            </li>
          ))}
        </ol>
      </section>
      <section aria-labelledby="signs">
        <h2 id="signs">{culturesText("signs")}</h2>
        {signs.length === 0 && <p>{culturesText("signsNone")}</p>}
        <ol className="plain-list" reversed>
          {signGroups(signs).map((group) => (
            <li key={group[0].signId} className="card">
              {group.length > 1 ? (
                <ReviewEntry {...{ cultures, group, nameOf, again }} />
              ) : (
                <SignEntry key={group[0].version} {...{ cultures, sign: group[0], nameOf, again }} />
              )}
            </li>
          ))}
        </ol>
      </section>
      <Findings {...props} />
    </>
  );
}

function Findings(props: { cultures: Cultures; nameOf: NameOf; again: () => void }): ReactNode {
  const findings = [...props.cultures.findings].reverse();
  return (
    <section aria-labelledby="findings">
      <h2 id="findings">{findingsText("title")}</h2>
      {findings.length === 0 && <p>{findingsText("none")}</p>}
      <ol className="plain-list" reversed>
        {findings.map((finding) => (
          <li key={finding.findingId} className="card">
            <FindingEntry key={finding.version} {...props} finding={finding} />
          </li>
        ))}
      </ol>
    </section>
  );
}
