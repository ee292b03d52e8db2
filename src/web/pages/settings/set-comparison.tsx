import { type ReactNode, useState } from "react";
import { setComparison } from "../../../../shared/api/baselines.ts";
import type { InputOf } from "../../../../shared/endpoint.ts";
import { defaultLimits, limitRules } from "../../../../shared/month-report.ts";
import { monthTyped, numberTyped } from "../../parts/form/as-typed.ts";
import { SelectField } from "../../parts/form/choice-field.tsx";
import { FieldScope, faultsOf } from "../../parts/form/faults.ts";
import { RecordForm } from "../../parts/form/record-form.tsx";
import { LongTextField, TextField } from "../../parts/form/text-field.tsx";
import { useSession } from "../../parts/session.tsx";
import { useDraft } from "../../parts/use-draft.ts";
import { useRecording } from "../../parts/use-recording.ts";
import { baselinesText as text } from "../../texts/baselines.ts";
import type { Baselines, Comparisons } from "./comparison-list.tsx";
import { factorLines, factorsOf } from "./factor-lines.ts";

type Limits = keyof typeof limitRules;
const rules = Object.entries(limitRules).map(([value, label]) => ({ value: value as Limits, label }));

/** Says with which baselines months are compared from a month on; it begins with the latest version. */
export function SetComparison(props: { known: Baselines; versions: Comparisons; done: () => void }): ReactNode {
  const { known, versions, done } = props;
  const { me, time, now, wards } = useSession();
  const latest = versions.at(-1);
  const [began] = useState<Draft>(() => ({
    ...{ fromMonth: time.dayOf(now()).slice(0, 7), reason: "" },
    infections: idText(latest?.infectionBaselineId),
    catheterDays: idText(latest?.utilizationBaselineId),
    goal: latest?.goal == null ? "" : String(latest.goal),
    limits: latest?.limits ?? defaultLimits,
    factors: factorLines(latest?.factors ?? [], wards),
  }));
  const { draft, change, clear } = useDraft("comparison", began, me.personId);
  const { sending, send } = useRecording(setComparison);
  const faults = faultsOf(sending);
  const record = async (): Promise<void> => {
    const reply = await send({ ...typed(draft, wards), replaces: latest?.number ?? 0 });
    if (reply.state !== "answered") return;
    clear();
    done();
  };
  const ofKind = (not: string) =>
    known.flatMap(({ baselineId, kind, name }) => (kind === not ? [] : [{ value: String(baselineId), label: name }]));
  return (
    <section aria-labelledby="set" className="on-screen">
      <h2 id="set">{text("set")}</h2>
      <p>{text("setLead")}</p>
      <FieldScope value="set">
        <RecordForm {...{ sending, record }} button={text("setRecord")} labelledBy="set">
          <TextField
            {...{ faults, pointer: "/fromMonth", label: text("fromMonth"), help: text("monthHelp") }}
            type="month"
            value={draft.fromMonth}
            change={(fromMonth) => change({ fromMonth })}
          />
          <SelectField
            {...{ faults, pointer: "/infectionBaselineId", label: text("infections"), empty: text("none") }}
            choices={ofKind("utilization-model")}
            value={draft.infections}
            change={(infections) => change({ infections })}
          />
          <SelectField
            {...{ faults, pointer: "/utilizationBaselineId", label: text("catheterDays"), empty: text("none") }}
            choices={ofKind("infection-model")}
            value={draft.catheterDays}
            change={(catheterDays) => change({ catheterDays })}
          />
          <SetRest {...{ draft, change, faults }} />
        </RecordForm>
      </FieldScope>
    </section>
  );
}

interface Draft {
  readonly fromMonth: string;
  readonly infections: string | null;
  readonly catheterDays: string | null;
  readonly goal: string;
  readonly limits: Limits;
  readonly factors: string;
  readonly reason: string;
}

/** What was typed, as it is sent. */
function typed(draft: Draft, wards: Parameters<typeof factorsOf>[1]): Omit<InputOf<typeof setComparison>, "replaces"> {
  const { fromMonth, infections, catheterDays, goal, limits, factors, reason } = draft;
  return {
    ...{ fromMonth: monthTyped(fromMonth), limits, reason },
    infectionBaselineId: infections === null ? null : Number(infections),
    utilizationBaselineId: catheterDays === null ? null : Number(catheterDays),
    goal: goal.trim() === "" ? null : numberTyped(goal),
    factors: factorsOf(factors, wards),
  };
}

function SetRest(props: {
  draft: Draft;
  change: (part: Partial<Draft>) => void;
  faults: ReturnType<typeof faultsOf>;
}): ReactNode {
  const { draft, change, faults } = props;
  return (
    <>
      <TextField
        {...{ faults, pointer: "/goal", label: text("goal"), help: text("goalHelp"), value: draft.goal }}
        inputMode="decimal"
        change={(goal) => change({ goal })}
      />
      <SelectField
        {...{ faults, pointer: "/limits", label: text("limits"), choices: rules, value: draft.limits }}
        change={(limits) => limits !== null && change({ limits })}
      />
      <LongTextField
        {...{ faults, pointer: "/factors", label: text("factors"), help: text("factorsHelp"), value: draft.factors }}
        change={(factors) => change({ factors })}
      />
      <LongTextField
        {...{ faults, pointer: "/reason", label: text("reason"), value: draft.reason }}
        change={(reason) => change({ reason })}
      />
    </>
  );
}

function idText(id: number | null | undefined): string | null {
  return id == null ? null : String(id);
}
