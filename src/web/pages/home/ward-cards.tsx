import type { ReactNode } from "react";
import type { readWardsNow } from "../../../../shared/api/wards-now.ts";
import type { OutputOf } from "../../../../shared/endpoint.ts";
import type { RoundState } from "../../../../shared/round-states.ts";
import { PageLink } from "../../parts/page-link.tsx";
import { Said } from "../../parts/said.tsx";
import { StateBadge } from "../../parts/state-badge.tsx";
import { homeText } from "../../texts/home.ts";
import { settingText } from "../../texts/words.ts";

type WardNow = OutputOf<typeof readWardsNow>["wards"][number];

/** What a ward's card counts beside its patients and catheters, with the shape of the state. */
const marks = [
  { figure: "overdue", words: "overdue", state: "overdue" },
  { figure: "pastThreshold", words: "pastThreshold", state: "past-threshold" },
  { figure: "doubtful", words: "doubtful", state: "doubtful" },
  { figure: "due", words: "due", state: "due" },
] as const satisfies readonly { figure: keyof WardNow; words: string; state: RoundState }[];

/** One card a ward. The figures lead to the round and the patients where the viewer may see them. */
export function WardCards({ wards, seesPatients }: { wards: readonly WardNow[]; seesPatients: boolean }): ReactNode {
  return (
    <ul className="plain-list ward-cards">
      {wards.map((ward) => (
        <li key={ward.wardId} className="card ward-card">
          <h2>
            <Said>{ward.code}</Said>
            {ward.name !== ward.code && (
              <span className="name-of">
                {" "}
                <Said>{ward.name}</Said>
              </span>
            )}
          </h2>
          {ward.setting !== "inpatient" && (
            <p className="small">{ward.setting === null ? homeText("noSetting") : settingText(ward.setting)}</p>
          )}
          <Figures ward={ward} seesPatients={seesPatients} />
          <Marks ward={ward} />
        </li>
      ))}
    </ul>
  );
}

function Figures({ ward, seesPatients }: { ward: WardNow; seesPatients: boolean }): ReactNode {
  const { wardId, code, patients, catheters } = ward;
  const patientWords = homeText("patientsCount", { count: patients });
  const catheterWords = homeText("cathetersCount", { count: catheters });
  if (!seesPatients) {
    return (
      <p>
        {patientWords}, {catheterWords}
      </p>
    );
  }
  return (
    <>
      <p>
        <PageLink to={`/wards/${wardId}/round`} className="button first">
          {homeText("toRound", { ward: code })}
        </PageLink>
      </p>
      <p className="row">
        <PageLink to={`/wards/${wardId}/round`}>{catheterWords}</PageLink>
        <PageLink to={`/wards/${wardId}/patients`}>{patientWords}</PageLink>
      </p>
    </>
  );
}

function Marks({ ward }: { ward: WardNow }): ReactNode {
  const shown = marks.filter(({ figure }) => ward[figure] > 0);
  if (shown.length === 0) return <p className="small">{homeText("nothingToDo")}</p>;
  return (
    <ul className="plain-list row ward-marks">
      {shown.map(({ figure, words, state }) => (
        <li key={figure}>
          <StateBadge state={state}>{homeText("mark", { count: ward[figure], words: homeText(words) })}</StateBadge>
        </li>
      ))}
    </ul>
  );
}
