import { type ReactNode, useId, useState } from "react";
import type { ReviewOutcome } from "../../../../shared/catheter-words.ts";
import type { PolicyBody } from "../../../../shared/policy.ts";
import { Said } from "../../parts/said.tsx";
import { roundText } from "../../texts/round.ts";

/** What a person answers to "is it still needed?". */
export interface ReviewAnswer {
  readonly outcome: ReviewOutcome;
  readonly indication?: string;
  readonly remark?: string;
}

/** The answers that need more than one touch: another indication, removal, or contact with the provider. */
export function OtherAnswer(props: { policy: PolicyBody; answer: (answer: ReviewAnswer) => void }): ReactNode {
  const { policy, answer } = props;
  const [remark, setRemark] = useState("");
  const id = useId();
  const give = (one: ReviewAnswer): void => answer(remark.trim() === "" ? one : { ...one, remark: remark.trim() });
  return (
    <div className="other-answer">
      <div className="row">
        <button type="button" onClick={() => give({ outcome: "remove" })}>
          {roundText("remove")}
        </button>
        <button type="button" onClick={() => give({ outcome: "ask" })}>
          {roundText("ask")}
        </button>
      </div>
      <p id={`${id}-why`}>{roundText("why")}</p>
      <fieldset className="choices plain" aria-labelledby={`${id}-why`}>
        {policy.indications.map(({ code, label }) => (
          <button type="button" key={code} onClick={() => give({ outcome: "keep", indication: code })}>
            <Said>{label}</Said>
          </button>
        ))}
      </fieldset>
      <div className="field">
        <label htmlFor={id}>{roundText("remark")}</label>
        <input id={id} value={remark} maxLength={500} onChange={(event) => setRemark(event.target.value)} />
      </div>
    </div>
  );
}
