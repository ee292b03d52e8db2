import { type ReactNode, useState } from "react";
import { admitPatient } from "../../../../shared/api/stays.ts";
import { day as dayText } from "../../../../shared/day.ts";
import { SelectField } from "../../parts/form/choice-field.tsx";
import { faultsOf } from "../../parts/form/faults.ts";
import { RecordForm } from "../../parts/form/record-form.tsx";
import { TextField } from "../../parts/form/text-field.tsx";
import { TimeField } from "../../parts/form/time-field.tsx";
import { Page } from "../../parts/page.tsx";
import { PageLink } from "../../parts/page-link.tsx";
import { useSession } from "../../parts/session.tsx";
import { useRecording } from "../../parts/use-recording.ts";
import type { PageProps } from "../../routes.ts";
import { fieldText } from "../../texts/fields.ts";
import { admissionText } from "../../texts/patients.ts";
import { UnknownPage } from "../unknown-page.tsx";

type Sex = "female" | "male" | "other" | "unknown";

const sexes = [
  { value: "female", label: admissionText("sexFemale") },
  { value: "male", label: admissionText("sexMale") },
  { value: "other", label: admissionText("sexOther") },
  { value: "unknown", label: admissionText("sexUnknown") },
] as const;

/** A patient, known or new, arrives on a ward. */
export function AdmissionPage({ found }: PageProps): ReactNode {
  const ward = useSession().wards.find(({ wardId }) => String(wardId) === found.wardId);
  if (!ward) return <UnknownPage />;
  return (
    <Page title={admissionText("title", { ward: ward.code })}>
      <AdmissionForm wardId={ward.wardId} />
    </Page>
  );
}

/** No draft is kept here: it would leave a patient's number on the device. A refusal and a lost connection keep the form. */
function AdmissionForm({ wardId }: { wardId: number }): ReactNode {
  const { time, now } = useSession();
  const [text, setText] = useState({ identifier: "", number: "", bed: "", birthDay: "" });
  const [admittedAt, setAdmittedAt] = useState(() => time.charted(now()));
  const [sex, setSex] = useState<Sex | null>(null);
  const { sending, send } = useRecording(admitPatient);
  const record = async (): Promise<void> => {
    const birthDay = dayText.safeParse(text.birthDay);
    const known = { bed: text.bed.trim() || null, birthDay: birthDay.success ? birthDay.data : null, sex };
    await send({ wardId, identifier: text.identifier, number: text.number, admittedAt, ...known });
  };
  if (sending.state === "answered") return <Admitted {...sending.value} wardId={wardId} />;
  const faults = faultsOf(sending);
  const line = (name: keyof typeof text) => ({
    ...{ faults, pointer: `/${name}`, label: admissionText(name), value: text[name] },
    change: (value: string) => setText({ ...text, [name]: value }),
  });
  return (
    <RecordForm {...{ sending, record }} button={admissionText("record")}>
      <TextField {...line("identifier")} />
      <TextField {...line("number")} />
      <TimeField
        pointer="/admittedAt"
        label={admissionText("admittedAt")}
        faults={faults}
        value={admittedAt}
        change={setAdmittedAt}
      />
      <TextField {...line("bed")} help={fieldText("optional")} />
      <TextField {...line("birthDay")} type="date" help={fieldText("optional")} />
      <SelectField
        pointer="/sex"
        label={admissionText("sex")}
        faults={faults}
        choices={sexes}
        value={sex}
        change={setSex}
        empty={admissionText("empty")}
      />
    </RecordForm>
  );
}

/** Asks at once for the catheter that came with the patient: that is when somebody looks. */
function Admitted(props: { patientId: number; stayId: number; wardId: number }): ReactNode {
  const stay = `/patients/${props.patientId}/stays/${props.stayId}`;
  return (
    <div role="status" className="notice done">
      <p>
        <strong>{admissionText("doneTitle")}.</strong> {admissionText("doneCatheter")}
      </p>
      <p className="row">
        <PageLink to={`${stay}/arrival`} className="button">
          {admissionText("doneFound")}
        </PageLink>
        <PageLink to={`${stay}/insertion`} className="button">
          {admissionText("doneInsert")}
        </PageLink>
        <PageLink to={`/wards/${props.wardId}/patients`} className="button">
          {admissionText("doneNone")}
        </PageLink>
      </p>
    </div>
  );
}
