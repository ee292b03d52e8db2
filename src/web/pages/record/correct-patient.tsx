import { type ReactNode, useState } from "react";
import { correctPatient } from "../../../../shared/api/patients.ts";
import { dayTypedOrNull } from "../../parts/form/as-typed.ts";
import { SelectField } from "../../parts/form/choice-field.tsx";
import { FieldScope, faultsOf } from "../../parts/form/faults.ts";
import { RecordForm } from "../../parts/form/record-form.tsx";
import { TextField } from "../../parts/form/text-field.tsx";
import { OpensOnce } from "../../parts/opens-once.tsx";
import type { PatientRecord } from "../../parts/patient/patient-record.ts";
import { useRecording } from "../../parts/use-recording.ts";
import { patientCorrectionText as text } from "../../texts/patient-correction.ts";

type Sex = "female" | "male" | "other" | "unknown";
const sexes: readonly Sex[] = ["female", "male", "other", "unknown"];

/** Adds or corrects the day of birth and the sex, with a reason; what the record said is kept. */
export function PatientCorrection(props: { record: PatientRecord; again: () => void }): ReactNode {
  return (
    <OpensOnce summary={text("summary")}>
      <CorrectPatient {...props} />
    </OpensOnce>
  );
}

function CorrectPatient({ record, again }: { record: PatientRecord; again: () => void }): ReactNode {
  const { patientId, birthDay, sex } = record.patient;
  const [born, setBorn] = useState<string>(birthDay ?? "");
  const [chosen, setChosen] = useState<Sex | null>(sexes.find((one) => one === sex) ?? null);
  const [reason, setReason] = useState("");
  const { sending, send } = useRecording(correctPatient);
  const faults = faultsOf(sending);
  const store = async (): Promise<void> => {
    const said = { birthDay: dayTypedOrNull(born), sex: chosen, reason };
    const reply = await send({ patientId, ...said, seen: { birthDay, sex } });
    if (reply.state === "answered") again();
  };
  return (
    <FieldScope value="patient">
      <RecordForm {...{ sending }} record={store} button={text("record")} isReady={reason.trim() !== ""}>
        <p className="help">{text("why")}</p>
        <TextField
          {...{ faults, pointer: "/birthDay", label: text("birthDay"), value: born }}
          type="date"
          change={setBorn}
        />
        <SelectField
          {...{ faults, pointer: "/sex", label: text("sex"), value: chosen, change: setChosen }}
          choices={sexes.map((value) => ({ value, label: text(value) }))}
          empty={text("notRecorded")}
        />
        <TextField {...{ faults, pointer: "/reason", label: text("reason"), value: reason, change: setReason }} />
        {sending.state === "refused" && sending.problem.document.current && (
          <button type="button" onClick={again}>
            {text("readAgain")}
          </button>
        )}
      </RecordForm>
    </FieldScope>
  );
}
