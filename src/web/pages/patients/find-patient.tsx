import type { ReactNode } from "react";
import { goTo } from "../../parts/address.ts";
import { PatientFinder } from "../../parts/patient/patient-finder.tsx";
import { patientsText } from "../../texts/patients.ts";

/** Goes to the record of the patient who has a number. */
export function FindPatient(): ReactNode {
  return (
    <section className="on-screen" aria-label={patientsText("find")}>
      <PatientFinder
        id="find"
        label={patientsText("findLabel")}
        button={patientsText("findGo")}
        none={
          <div className="notice">
            <p>
              <strong>{patientsText("findNone")}</strong> {patientsText("findNoneHow")}
            </p>
          </div>
        }
        take={([first, ...more]) => {
          const isOne = first !== undefined && more.length === 0;
          if (isOne) goTo(`/patients/${first.patientId}`);
          return isOne;
        }}
      />
    </section>
  );
}
