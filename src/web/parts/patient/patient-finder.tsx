import { type FormEvent, type ReactNode, useState } from "react";
import { findPatients } from "../../../../shared/api/patients.ts";
import type { OutputOf } from "../../../../shared/endpoint.ts";
import { fieldText } from "../../texts/fields.ts";
import { ask, type Reply } from "../server.ts";
import { Refusal } from "../show-answer.tsx";

type Found = OutputOf<typeof findPatients>["patients"];

/**
 * Asks for a patient by the hospital's number, which a scanner may type; it never stands in an address. `take` gets who
 * was found and says whether somebody useful is among them; if not, `none` is shown.
 */
export function PatientFinder(props: {
  id: string;
  label: string;
  button: string;
  none: ReactNode;
  take: (found: Found) => boolean;
}): ReactNode {
  const { id, label, button, none, take } = props;
  const [identifier, setIdentifier] = useState("");
  const [failed, setFailed] = useState<Reply<unknown> | null>(null);
  const find = async (): Promise<void> => {
    const reply = await ask(findPatients, { identifier });
    setFailed(reply.state === "answered" && take(reply.value.patients) ? null : reply);
  };
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    void find();
  };
  return (
    <form onSubmit={submit}>
      <div className="field">
        <label htmlFor={id}>{label}</label>
        <span className="row">
          <input
            id={id}
            value={identifier}
            autoComplete="off"
            onChange={(event) => setIdentifier(event.target.value)}
          />
          <button type="submit" disabled={identifier.trim() === ""}>
            {button}
          </button>
        </span>
      </div>
      <div role="status">
        {failed?.state === "refused" && <Refusal document={failed.problem.document} />}
        {failed?.state === "unreachable" && <p className="notice fault">{fieldText("lostTitle")}</p>}
        {failed?.state === "answered" && none}
      </div>
    </form>
  );
}
