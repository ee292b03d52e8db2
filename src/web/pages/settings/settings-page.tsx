import { type ReactNode, useState } from "react";
import { listPolicies } from "../../../../shared/api/policies.ts";
import { Said } from "../../parts/said.tsx";
import { useSession } from "../../parts/session.tsx";
import { ShowAnswer } from "../../parts/show-answer.tsx";
import { Term } from "../../parts/term.tsx";
import { useAnswer } from "../../parts/use-answer.ts";
import { roundText } from "../../texts/round.ts";
import { settingsText } from "../../texts/settings.ts";
import { PolicyShown } from "./policy-shown.tsx";
import { PolicyVersions } from "./policy-versions.tsx";
import { SettingsFrame } from "./settings-frame.tsx";
import { WardTable } from "./ward-table.tsx";

/** What holds here: the facility with its census, the wards with their settings, and each ward's policy. */
export function SettingsPage(): ReactNode {
  const { wards } = useSession();
  const versions = useAnswer(listPolicies, {});
  const [wardId, setWardId] = useState(wards[0]?.wardId ?? null);
  return (
    <SettingsFrame title={settingsText("title")}>
      <FacilityShown />
      <section aria-labelledby="wards">
        <h2 id="wards">{settingsText("wards")}</h2>
        <WardTable />
      </section>
      {wardId !== null && (
        <>
          <p className="row on-screen">
            <label htmlFor="policy-ward">{roundText("ward")}</label>
            <select id="policy-ward" value={wardId} onChange={(event) => setWardId(Number(event.target.value))}>
              {wards.map((ward) => (
                <option key={ward.wardId} value={ward.wardId}>
                  {ward.code}
                </option>
              ))}
            </select>
          </p>
          <PolicyShown key={wardId} wardId={wardId} />
        </>
      )}
      <ShowAnswer asked={versions} what={settingsText("what")}>
        {({ policies }) => <PolicyVersions policies={policies} none={settingsText("noVersions")} />}
      </ShowAnswer>
    </SettingsFrame>
  );
}

function FacilityShown(): ReactNode {
  const { facility } = useSession();
  return (
    <section aria-labelledby="facility">
      <h2 id="facility">{settingsText("facility")}</h2>
      <dl className="facts">
        <dt>{settingsText("name")}</dt>
        <dd>
          <Said>{facility.name}</Said>
        </dd>
        <dt>{settingsText("zone")}</dt>
        <dd>
          <Said>{facility.zone}</Said>
        </dd>
        <dt>
          <Term name="census">{settingsText("census")}</Term>
        </dt>
        <dd>
          {facility.census.map(({ fromDay, time }, i) => (
            <div key={fromDay}>{i === 0 ? time : settingsText("censusFrom", { time, day: fromDay })}</div>
          ))}
        </dd>
      </dl>
    </section>
  );
}
