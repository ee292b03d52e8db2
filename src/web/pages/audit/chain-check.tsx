import { type ReactNode, useState } from "react";
import { verifyAudit } from "../../../../shared/api/audit.ts";
import { ShowAnswer } from "../../parts/show-answer.tsx";
import { useAnswer } from "../../parts/use-answer.ts";
import { auditText } from "../../texts/audit.ts";

/** Computes the sealed chain anew when somebody asks for it. */
export function ChainCheck(): ReactNode {
  const [isAsked, setAsked] = useState(false);
  return (
    <section className="on-screen">
      <button type="button" onClick={() => setAsked(true)} disabled={isAsked}>
        {auditText("verify")}
      </button>
      <div role="status">{isAsked && <Checked />}</div>
    </section>
  );
}

function Checked(): ReactNode {
  const asked = useAnswer(verifyAudit, {});
  return (
    <ShowAnswer asked={asked} what={auditText("verifyWhat")}>
      {({ sealed, waiting, firstFault, head }) => (
        <div className={firstFault ? "notice fault" : "notice done"}>
          <p>
            {firstFault
              ? auditText("broken", { number: firstFault.number, detail: firstFault.detail })
              : auditText("whole", { sealed, waiting })}
          </p>
          {head && (
            <p className="small">
              <code>{auditText("head", { number: head.number, hash: head.hash })}</code>
            </p>
          )}
        </div>
      )}
    </ShowAnswer>
  );
}
