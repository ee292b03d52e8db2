import type { ReactNode } from "react";
import type { listPolicies } from "../../../../shared/api/policies.ts";
import type { OutputOf } from "../../../../shared/endpoint.ts";
import { policyRules, ruleSentence } from "../../../../shared/policy-rules.ts";
import { type NameOf, WithNames } from "../../parts/people-names.tsx";
import { Said } from "../../parts/said.tsx";
import { useSession } from "../../parts/session.tsx";
import { settingsText } from "../../texts/settings.ts";

export type Policies = OutputOf<typeof listPolicies>;
type Version = Policies["policies"][number];

/** Versions that somebody set, newest first, with who and when: none is ever changed. */
export function PolicyVersions(props: {
  policies: Policies["policies"];
  /** What is said when there is none. */
  none: string;
}): ReactNode {
  const { policies, none } = props;
  return (
    <section aria-labelledby="versions">
      <h2 id="versions">{settingsText("versions")}</h2>
      {policies.length === 0 ? (
        <p>{none}</p>
      ) : (
        <WithNames what={settingsText("what")}>
          {(nameOf) => (
            <ul>
              {[...policies].reverse().map((version) => (
                <li key={version.policyId}>
                  <OneVersion {...{ version, nameOf }} />
                </li>
              ))}
            </ul>
          )}
        </WithNames>
      )}
    </section>
  );
}

function OneVersion({ version, nameOf }: { version: Version; nameOf: NameOf }): ReactNode {
  const { wardCode, time } = useSession();
  const { wardId, number, fromDay, reason, recordedAt, recordedBy, body } = version;
  const ward = wardId === null ? null : wardCode(wardId);
  const whose = ward === null ? settingsText("ofFacility") : `${settingsText("ofWard")} (${ward})`;
  const when = `${time.dayOf(recordedAt)} ${time.clock(recordedAt)}`;
  return (
    <>
      <Said>{settingsText("versionLine", { whose, number, day: fromDay, reason })}</Said>{" "}
      <span className="small">
        <Said>{settingsText("setBy", { who: nameOf(recordedBy), when })}</Said>
      </span>
      {body === null ? (
        <p>{settingsText("versionAbove")}</p>
      ) : (
        <details className="on-screen">
          <summary>{settingsText("versionPrints")}</summary>
          <ul>
            {policyRules.map((rule) => (
              <li key={rule}>
                <Said>{ruleSentence(body, rule, { number, ward, fromDay })}</Said>
              </li>
            ))}
          </ul>
        </details>
      )}
    </>
  );
}
