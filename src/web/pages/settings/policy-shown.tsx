import type { ReactNode } from "react";
import { readPolicy } from "../../../../shared/api/policies.ts";
import type { PolicyItem } from "../../../../shared/policy.ts";
import { Said } from "../../parts/said.tsx";
import { useSession } from "../../parts/session.tsx";
import { ShowAnswer } from "../../parts/show-answer.tsx";
import { useAnswer } from "../../parts/use-answer.ts";
import { fieldLabel } from "../../texts/record-labels.ts";
import { settingsText } from "../../texts/settings.ts";

/** The policy in force on a ward today: the sentences that flags print, and its lists with their sources. */
export function PolicyShown({ wardId }: { wardId: number }): ReactNode {
  const ward = useSession().wardCode(wardId);
  const asked = useAnswer(readPolicy, { wardId });
  return (
    <section aria-labelledby="policy">
      <h2 id="policy">{settingsText("policyOf", { ward })}</h2>
      <ShowAnswer asked={asked} what={settingsText("policyWhat", { ward })}>
        {({ number, fromDay, body, sentences }) => (
          <>
            <p>
              {number === 0 || fromDay === null
                ? settingsText("builtIn")
                : settingsText("version", { number, day: fromDay })}
            </p>
            <h3>{settingsText("rules")}</h3>
            <ul>
              {sentences.map(({ rule, sentence }) => (
                <li key={rule}>
                  <Said>{sentence}</Said>
                </li>
              ))}
            </ul>
            <Items title={settingsText("indications")} items={body.indications} />
            <Items title={settingsText("bundle")} items={body.bundle} />
            <h3>{settingsText("required")}</h3>
            <ul>
              {body.requiredFields.map((field) => (
                <li key={field}>{fieldLabel(field)}</li>
              ))}
            </ul>
          </>
        )}
      </ShowAnswer>
    </section>
  );
}

function Items({ title, items }: { title: string; items: readonly PolicyItem[] }): ReactNode {
  return (
    <>
      <h3>{title}</h3>
      <ul>
        {items.map(({ code, label, source }) => (
          <li key={code}>
            <Said>{label}</Said> <span className="small">{settingsText("source", { source })}</span>
          </li>
        ))}
      </ul>
    </>
  );
}
