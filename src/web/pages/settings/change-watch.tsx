import { type ReactNode, useState } from "react";
import { endWatch, type listScope, voidWatch } from "../../../../shared/api/scope.ts";
import type { OutputOf } from "../../../../shared/endpoint.ts";
import { monthTyped } from "../../parts/form/as-typed.ts";
import { FieldScope, faultsOf } from "../../parts/form/faults.ts";
import type { Difference } from "../../parts/form/stale-choice.tsx";
import { LongTextField, TextField } from "../../parts/form/text-field.tsx";
import { EntryForm } from "../../parts/form/update-form.tsx";
import { useSession } from "../../parts/session.tsx";
import { useRecording } from "../../parts/use-recording.ts";
import { scopeText } from "../../texts/settings.ts";

interface ChangeProps {
  readonly scope: OutputOf<typeof listScope>["scopes"][number];
  readonly done: () => void;
}

/** Changes the last month of a watch, or voids it; shut until somebody opens it. */
export function ChangeWatch(props: ChangeProps): ReactNode {
  const { scopeId, wardId, fromMonth } = props.scope;
  const { wardCode } = useSession();
  return (
    <details className="on-screen">
      <summary>
        {scopeText("change")}
        <span className="unseen"> {scopeText("changeOf", { ward: wardCode(wardId), from: fromMonth })}</span>
      </summary>
      <FieldScope value={`end-${scopeId}`}>
        <EndWatch {...props} />
      </FieldScope>
      <FieldScope value={`void-${scopeId}`}>
        <VoidWatch {...props} />
      </FieldScope>
    </details>
  );
}

function EndWatch({ scope, done }: ChangeProps): ReactNode {
  const { scopeId, wardId, version } = scope;
  const [toMonth, setToMonth] = useState<string>(scope.toMonth ?? "");
  const [reason, setReason] = useState("");
  const { sending, send } = useRecording(endWatch);
  const faults = faultsOf(sending);
  const record = async (seenVersion: number): Promise<void> => {
    const until = toMonth.trim() === "" ? null : monthTyped(toMonth);
    const reply = await send({ wardId, scopeId, toMonth: until, reason, seenVersion });
    if (reply.state === "answered") done();
  };
  const compare = (current: Readonly<Record<string, unknown>>) => [lastMonths(toMonth, current)];
  return (
    <EntryForm
      {...{ sending, record, compare }}
      again={done}
      seenVersion={version}
      button={scopeText("changeEnd")}
      isSmall
    >
      <TextField
        pointer="/toMonth"
        label={scopeText("toMonth")}
        help={scopeText("toHelp")}
        faults={faults}
        type="month"
        value={toMonth}
        change={setToMonth}
      />
      <LongTextField pointer="/reason" label={scopeText("reason")} faults={faults} value={reason} change={setReason} />
    </EntryForm>
  );
}

function VoidWatch({ scope, done }: ChangeProps): ReactNode {
  const { scopeId, wardId, version } = scope;
  const [reason, setReason] = useState("");
  const { sending, send } = useRecording(voidWatch);
  const record = async (seenVersion: number): Promise<void> => {
    const reply = await send({ wardId, scopeId, reason, seenVersion });
    if (reply.state === "answered") done();
  };
  return (
    <EntryForm
      {...{ sending, record }}
      compare={(current) => [lastMonths(scope.toMonth ?? "", current)]}
      again={done}
      seenVersion={version}
      button={scopeText("changeVoid")}
      isSmall
    >
      <LongTextField
        pointer="/reason"
        label={scopeText("reason")}
        faults={faultsOf(sending)}
        value={reason}
        change={setReason}
      />
    </EntryForm>
  );
}

function lastMonths(mine: string, current: Readonly<Record<string, unknown>>): Difference {
  const words = (month: unknown): string => (typeof month === "string" && month !== "" ? month : scopeText("open"));
  return { label: scopeText("toMonth"), mine: words(mine), theirs: words(current.toMonth) };
}
