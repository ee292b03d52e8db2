import { type ReactNode, useState } from "react";
import { changeSource, type listSources } from "../../../../shared/api/import-sources.ts";
import type { OutputOf } from "../../../../shared/endpoint.ts";
import { FieldScope, faultsOf } from "../../parts/form/faults.ts";
import type { Difference } from "../../parts/form/stale-choice.tsx";
import { LongTextField } from "../../parts/form/text-field.tsx";
import { EntryForm } from "../../parts/form/update-form.tsx";
import { useRecording } from "../../parts/use-recording.ts";
import { sourceText } from "../../texts/import-sources.ts";
import { type SourceDraft, SourceFields, sourceSaid } from "./source-fields.tsx";

export type ImportSource = OutputOf<typeof listSources>["sources"][number];

interface ChangeProps {
  readonly source: ImportSource;
  readonly done: () => void;
}

/** Changes the name and settings of a source; closed until a person opens it. */
export function ChangeSource({ source, done }: ChangeProps): ReactNode {
  return (
    <details className="on-screen">
      <summary>
        {sourceText("change")} <span className="unseen">{sourceText("changeOf", { name: source.name })}</span>
      </summary>
      <FieldScope value={`source-${source.sourceId}`}>
        <ChangeForm {...{ source, done }} />
      </FieldScope>
    </details>
  );
}

function ChangeForm({ source, done }: ChangeProps): ReactNode {
  const { sourceId, name, settings, version } = source;
  const [draft, setDraft] = useState<SourceDraft>({ name, ...settings });
  const [reason, setReason] = useState("");
  const { sending, send } = useRecording(changeSource);
  const faults = faultsOf(sending);
  const record = async (seenVersion: number): Promise<void> => {
    const reply = await send({ sourceId, ...sourceSaid(draft), reason, seenVersion });
    if (reply.state === "answered") done();
  };
  return (
    <EntryForm
      {...{ sending, record }}
      compare={(current) => differences(draft, current)}
      again={done}
      seenVersion={version}
      button={sourceText("record")}
      isSmall
    >
      <p className="small">{sourceText("changeHelp")}</p>
      <SourceFields {...{ draft, faults }} change={(part) => setDraft((before) => ({ ...before, ...part }))} />
      <LongTextField pointer="/reason" label={sourceText("reason")} faults={faults} value={reason} change={setReason} />
    </EntryForm>
  );
}

/** What the person would record beside what is recorded by now. */
function differences(mine: SourceDraft, current: Readonly<Record<string, unknown>>): Difference[] {
  const now = current as unknown as SourceDraft;
  return [
    { label: sourceText("name"), mine: mine.name, theirs: now.name },
    {
      label: sourceText("emptyOrganism"),
      mine: sourceText(`emptyOrganism_${mine.emptyOrganism}`),
      theirs: sourceText(`emptyOrganism_${now.emptyOrganism}`),
    },
    {
      label: sourceText("midnight"),
      mine: sourceText(`midnight_${mine.midnight}`),
      theirs: sourceText(`midnight_${now.midnight}`),
    },
  ];
}
