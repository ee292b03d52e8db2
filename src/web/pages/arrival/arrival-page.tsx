import { type ReactNode, useState } from "react";
import { recordCatheterOnArrival } from "../../../../shared/api/catheters.ts";
import type { catheterKind } from "../../../../shared/vocabulary.ts";
import { goTo } from "../../parts/address.ts";
import { ChoiceField } from "../../parts/form/choice-field.tsx";
import { faultsOf } from "../../parts/form/faults.ts";
import { RecordForm } from "../../parts/form/record-form.tsx";
import { TimeField } from "../../parts/form/time-field.tsx";
import { Page } from "../../parts/page.tsx";
import { StayPage, type StayShown } from "../../parts/patient/stay-page.tsx";
import { Said } from "../../parts/said.tsx";
import { useSession } from "../../parts/session.tsx";
import { useDraft } from "../../parts/use-draft.ts";
import { useRecording } from "../../parts/use-recording.ts";
import type { PageProps } from "../../routes.ts";
import { arrivalText, insertionText } from "../../texts/insertion.ts";
import { KindField } from "../insertion/kind-field.tsx";

/** A catheter that was in when the patient came: three fields. */
export function ArrivalPage({ found }: PageProps): ReactNode {
  return (
    <Page title={arrivalText("title")}>
      <StayPage found={found} lead={<p>{arrivalText("lead")}</p>}>
        {(shown) => <ArrivalForm {...shown} />}
      </StayPage>
    </Page>
  );
}

function ArrivalForm({ stayId, policy, wardId }: StayShown): ReactNode {
  const { me, time, now } = useSession();
  const [began] = useState(() => ({
    kind: "indwelling-urethral" as (typeof catheterKind.options)[number],
    foundAt: time.charted(now()),
    indication: "none",
  }));
  const { draft, change, clear } = useDraft(`arrival-${stayId}`, began, me.personId);
  const { sending, send } = useRecording(recordCatheterOnArrival);
  const record = async (): Promise<void> => {
    const { kind, foundAt, indication } = draft;
    const reply = await send({ stayId, kind, foundAt, ...(indication === "none" ? {} : { indication }) });
    if (reply.state !== "answered") return;
    clear();
    goTo(`/wards/${wardId}/round`);
  };
  const faults = faultsOf(sending);
  const reasons = policy.indications.map(({ code, label }) => ({ value: code, label: <Said>{label}</Said> }));
  return (
    <RecordForm {...{ sending, record }} button={arrivalText("record")}>
      <ChoiceField
        pointer="/indication"
        label={insertionText("indication")}
        faults={faults}
        isTall
        choices={[...reasons, { value: "none", label: arrivalText("unknownIndication") }]}
        value={draft.indication}
        change={(indication) => change({ indication })}
      />
      <TimeField
        pointer="/foundAt"
        label={arrivalText("foundAt")}
        faults={faults}
        value={draft.foundAt}
        change={(foundAt) => change({ foundAt })}
      />
      <KindField faults={faults} value={draft.kind} change={(kind) => change({ kind })} />
    </RecordForm>
  );
}
