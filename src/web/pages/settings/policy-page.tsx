import { type ReactNode, useState } from "react";
import { listPolicies } from "../../../../shared/api/policies.ts";
import { goTo } from "../../parts/address.ts";
import { useSession } from "../../parts/session.tsx";
import { ShowAnswer } from "../../parts/show-answer.tsx";
import { useAnswer } from "../../parts/use-answer.ts";
import type { PageProps } from "../../routes.ts";
import { policyText } from "../../texts/policy-rules.ts";
import { DoneNotice } from "./done-notice.tsx";
import { PolicyEditor } from "./policy-editor.tsx";
import { PolicyVersions } from "./policy-versions.tsx";
import { SettingsFrame } from "./settings-frame.tsx";

/** The versions of the facility's policy, or of the ward's that the address names, and a new one for whom it is. */
export function PolicyPage({ question }: PageProps): ReactNode {
  const { wards } = useSession();
  const named = Number(question.get("ward"));
  const wardId = wards.find((ward) => ward.wardId === named)?.wardId ?? null;
  return (
    <SettingsFrame title={policyText("title")}>
      <Whose wardId={wardId} />
      <OfOne key={wardId} wardId={wardId} />
    </SettingsFrame>
  );
}

function Whose({ wardId }: { wardId: number | null }): ReactNode {
  const { wards } = useSession();
  const choose = (value: string): void => goTo(value === "" ? "/settings/policy" : `/settings/policy?ward=${value}`);
  return (
    <p className="row on-screen">
      <label htmlFor="whose">{policyText("whose")}</label>
      <select id="whose" value={wardId ?? ""} onChange={(event) => choose(event.target.value)}>
        <option value="">{policyText("ofFacility")}</option>
        {wards.map((ward) => (
          <option key={ward.wardId} value={ward.wardId}>
            {policyText("ofWard", { ward: ward.code })}
          </option>
        ))}
      </select>
    </p>
  );
}

function OfOne({ wardId }: { wardId: number | null }): ReactNode {
  const { may } = useSession();
  const asked = useAnswer(listPolicies, {});
  const [begun, setBegun] = useState(0);
  const [set, setSet] = useState<number | null>(null);
  const restart = (): void => {
    setBegun((count) => count + 1);
    asked.again();
  };
  const done = (number: number): void => {
    setSet(number);
    restart();
  };
  return (
    <ShowAnswer asked={asked} what={policyText("what")}>
      {(known) => {
        const own = known.policies.filter((policy) => policy.wardId === wardId);
        return (
          <>
            <DoneNotice words={set === null ? null : policyText("done", { number: set })} />
            <PolicyVersions policies={own} none={policyText(wardId === null ? "noneOfFacility" : "noneOfWard")} />
            {may("set-policy") && (
              <section aria-labelledby="new-version" className="on-screen">
                <h2 id="new-version">{policyText("form")}</h2>
                <p>{policyText("lead")}</p>
                <PolicyEditor key={`${begun} ${own.length}`} {...{ known, wardId, done, restart }} />
              </section>
            )}
          </>
        );
      }}
    </ShowAnswer>
  );
}
