import type { FormEvent, ReactNode } from "react";
import { fieldText } from "../../texts/fields.ts";
import type { Sending } from "../use-recording.ts";
import { ProblemNotice } from "./problem-notice.tsx";

/** What every form that records something is given. */
export interface RecordFormProps {
  readonly sending: Sending<unknown>;
  readonly record: () => Promise<unknown>;
  /** What the button says. */
  readonly button: string;
  /** Whether enough was written down to be sent; true when left out. */
  readonly isReady?: boolean;
  /** The form is not what its page is for, so its button does not stand out. */
  readonly isSmall?: boolean;
  /** Says that the values at these pointers are right; left out where nothing is confirmable. */
  readonly confirm?: (pointers: readonly string[]) => void;
  /** Why it was not recorded, in the place of the usual words. */
  readonly problem?: ReactNode;
  /** The id of the form's heading. */
  readonly labelledBy?: string;
  readonly children: ReactNode;
}

/** A form that is sent to be recorded: why it was not, its fields, and its button, which waits for the answer. */
export function RecordForm(props: RecordFormProps): ReactNode {
  const { sending, record, button, isReady = true, isSmall = false, confirm, problem, labelledBy, children } = props;
  const isSending = sending.state === "sending";
  const isWaiting = isSending || sending.state === "asking";
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    void record();
  };
  return (
    <form onSubmit={submit} noValidate aria-labelledby={labelledBy}>
      {problem ?? <ProblemNotice sending={sending} sendAgain={() => void record()} {...(confirm ? { confirm } : {})} />}
      {children}
      <button type="submit" className={isSmall ? undefined : "first"} disabled={isWaiting || !isReady}>
        {isSending ? fieldText("sending") : button}
      </button>
    </form>
  );
}
