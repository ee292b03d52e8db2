import { type FormEvent, type ReactNode, useEffect, useRef, useState } from "react";
import { insertCatheter } from "../../../../shared/api/catheters.ts";
import type { PolicyBody } from "../../../../shared/policy.ts";
import { goTo } from "../../parts/address.ts";
import { DraftNotice } from "../../parts/draft-notice.tsx";
import { faultsOf } from "../../parts/form/faults.ts";
import { ProblemNotice } from "../../parts/form/problem-notice.tsx";
import { ageDays } from "../../parts/patient/patient-record.ts";
import type { StayShown } from "../../parts/patient/stay-page.tsx";
import { useSession } from "../../parts/session.tsx";
import { useDraft } from "../../parts/use-draft.ts";
import { useRecording } from "../../parts/use-recording.ts";
import { fieldText } from "../../texts/fields.ts";
import { insertionText } from "../../texts/insertion.ts";
import { StepAfter, StepPeople } from "./aftercare-steps.tsx";
import { InsertionCheck, InsertionDone } from "./insertion-check.tsx";
import { emptyInsertion, faultsWhileTyping, type InsertionDraft, insertionInput } from "./insertion-draft.ts";
import { StepBefore, StepCatheter, StepTechnique } from "./insertion-steps.tsx";

const steps = [
  { name: "stepBefore", Step: StepBefore },
  { name: "stepTechnique", Step: StepTechnique },
  { name: "stepCatheter", Step: StepCatheter },
  { name: "stepAfter", Step: StepAfter },
  { name: "stepPeople", Step: StepPeople },
  { name: "stepCheck", Step: null },
] as const;

/** The steps one after the other. Each has its address, so that the browser's back button goes one step back. */
export function InsertionFlow({
  record,
  stayId,
  policy,
  wardId,
  step,
}: StayShown & { step: string | null }): ReactNode {
  const { me, time, now } = useSession();
  const [began] = useState(() => emptyInsertion(time.charted(now())));
  const { draft, change, clear, wasKept } = useDraft(`insertion-${stayId}`, began, me.personId);
  const { sending, send } = useRecording(insertCatheter);
  const at = Math.min(Math.max(Number(step ?? 1) || 1, 1), steps.length);
  if (sending.state === "answered") {
    return <InsertionDone {...{ draft, policy, wardId }} patientId={record.patient.patientId} done={sending.value} />;
  }
  const recordIt = async (input: InsertionDraft): Promise<void> => {
    const reply = await send(insertionInput(input, stayId));
    if (reply.state === "answered") clear();
  };
  const confirm = (pointers: readonly string[]): void => {
    const confirmed = { ...draft, confirm: [...draft.confirm, ...pointers] };
    change(confirmed);
    void recordIt(confirmed);
  };
  const typing = faultsWhileTyping(draft, ageDays(record, time.dayOf(now())));
  return (
    <>
      {wasKept && at === 1 && <DraftNotice drop={() => change(began)} />}
      <ProblemNotice sending={sending} sendAgain={() => void recordIt(draft)} confirm={confirm} />
      <StepForm
        {...{ at, draft, change, policy }}
        faults={[...faultsOf(sending), ...typing]}
        isSending={sending.state === "sending"}
        finish={() => void recordIt(draft)}
      />
    </>
  );
}

function StepForm(props: {
  at: number;
  draft: InsertionDraft;
  change: (part: Partial<InsertionDraft>) => void;
  policy: PolicyBody;
  faults: Parameters<typeof StepBefore>[0]["faults"];
  isSending: boolean;
  finish: () => void;
}): ReactNode {
  const { at, draft, change, policy, faults, isSending, finish } = props;
  const { name, Step } = steps[at - 1] ?? steps[0];
  const isLast = at === steps.length;
  const heading = useStepFocus(at);
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    if (isLast) finish();
    else goTo(stepAddress(at + 1));
  };
  return (
    <form onSubmit={submit} noValidate>
      <h2 ref={heading} tabIndex={-1}>
        {insertionText("stepOf", { step: at, steps: steps.length, name: insertionText(name) })}
      </h2>
      {Step ? <Step {...{ draft, change, faults, policy }} /> : <InsertionCheck {...{ draft, policy }} />}
      <div className="row">
        {at > 1 && (
          <button type="button" onClick={() => goTo(stepAddress(at - 1))}>
            {insertionText("back")}
          </button>
        )}
        <button type="submit" className="first" disabled={isSending}>
          {isSending ? fieldText("sending") : insertionText(isLast ? "record" : "next")}
        </button>
      </div>
    </form>
  );
}

function stepAddress(step: number): string {
  return `${location.pathname}?step=${step}`;
}

/** The heading of a step gets the focus when the person goes to it, so that a screen reader begins there. */
function useStepFocus(at: number) {
  const heading = useRef<HTMLHeadingElement>(null);
  const before = useRef(at);
  useEffect(() => {
    if (before.current !== at) heading.current?.focus();
    before.current = at;
  }, [at]);
  return heading;
}
