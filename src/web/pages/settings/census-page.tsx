import { type ReactNode, useState } from "react";
import { setCensus } from "../../../../shared/api/facility.ts";
import type { CensusTime, Month } from "../../../../shared/day.ts";
import { dayTyped } from "../../parts/form/as-typed.ts";
import { faultsOf } from "../../parts/form/faults.ts";
import { RecordForm } from "../../parts/form/record-form.tsx";
import { LongTextField, TextField } from "../../parts/form/text-field.tsx";
import { useSession } from "../../parts/session.tsx";
import { Term } from "../../parts/term.tsx";
import { useDraft } from "../../parts/use-draft.ts";
import { useRecording } from "../../parts/use-recording.ts";
import { monthAfter } from "../../parts/words.ts";
import { censusText, settingsText } from "../../texts/settings.ts";
import { DoneNotice } from "./done-notice.tsx";
import { SettingsFrame } from "./settings-frame.tsx";

/** The census times, and another one from a month to come for whom it is. */
export function CensusPage(): ReactNode {
  const { may, facility, renew } = useSession();
  const [set, setSet] = useState(0);
  const done = (): void => {
    setSet((count) => count + 1);
    renew();
  };
  return (
    <SettingsFrame title={censusText("title")}>
      <p>
        {censusText("lead")} <Term name="census" />
      </p>
      <DoneNotice words={set > 0 ? censusText("done") : null} />
      <h2>{censusText("now")}</h2>
      <ul>
        {facility.census.map(({ fromDay, time }, i) => (
          <li key={fromDay}>
            {i === 0 ? censusText("first", { time }) : settingsText("censusFrom", { time, day: fromDay })}
          </li>
        ))}
      </ul>
      {may("set-facility") && (
        <section aria-labelledby="set" className="on-screen">
          <h2 id="set">{censusText("form")}</h2>
          <SetCensus key={set} done={done} />
        </section>
      )}
    </SettingsFrame>
  );
}

function SetCensus({ done }: { done: () => void }): ReactNode {
  const { me, time, now } = useSession();
  const [began] = useState(() => {
    const next = monthAfter(time.dayOf(now()).slice(0, 7) as Month, 1);
    return { time: "", fromDay: next === null ? "" : `${next}-01`, reason: "" };
  });
  const { draft, change, clear } = useDraft("census", began, me.personId);
  const { sending, send } = useRecording(setCensus);
  const faults = faultsOf(sending);
  const record = async (): Promise<void> => {
    const reply = await send({
      ...{ time: draft.time.trim() as CensusTime, fromDay: dayTyped(draft.fromDay), reason: draft.reason },
    });
    if (reply.state !== "answered") return;
    clear();
    done();
  };
  return (
    <RecordForm {...{ sending, record }} button={censusText("record")} labelledBy="set">
      <TextField
        pointer="/time"
        label={censusText("time")}
        help={censusText("timeHelp")}
        faults={faults}
        value={draft.time}
        change={(value) => change({ time: value })}
      />
      <TextField
        pointer="/fromDay"
        label={censusText("fromDay")}
        help={censusText("fromHelp")}
        faults={faults}
        type="date"
        value={draft.fromDay}
        change={(fromDay) => change({ fromDay })}
      />
      <LongTextField
        pointer="/reason"
        label={settingsText("reason")}
        faults={faults}
        value={draft.reason}
        change={(reason) => change({ reason })}
      />
    </RecordForm>
  );
}
