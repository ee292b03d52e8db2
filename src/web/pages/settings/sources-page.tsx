import { type ReactNode, useState } from "react";
import { addSource, listSources } from "../../../../shared/api/import-sources.ts";
import { defaultSourceSettings } from "../../../../shared/source-settings.ts";
import { faultsOf } from "../../parts/form/faults.ts";
import { RecordForm } from "../../parts/form/record-form.tsx";
import { type NameOf, WithNames } from "../../parts/people-names.tsx";
import { Said } from "../../parts/said.tsx";
import { useSession } from "../../parts/session.tsx";
import { ShowAnswer } from "../../parts/show-answer.tsx";
import { useAnswer } from "../../parts/use-answer.ts";
import { useDraft } from "../../parts/use-draft.ts";
import { useRecording } from "../../parts/use-recording.ts";
import { sourceText } from "../../texts/import-sources.ts";
import { ChangeSource, type ImportSource } from "./change-source.tsx";
import { DoneNotice } from "./done-notice.tsx";
import { SettingsFrame } from "./settings-frame.tsx";
import { SourceAliases } from "./source-aliases.tsx";
import { type SourceDraft, SourceFields, sourceSaid } from "./source-fields.tsx";

/** The systems that files come from, and how the files of each are read. */
export function SourcesPage(): ReactNode {
  const asked = useAnswer(listSources, {});
  const [said, setSaid] = useState<{ readonly words: string; readonly times: number } | null>(null);
  const done = (words: string): void => {
    setSaid((before) => ({ words, times: (before?.times ?? 0) + 1 }));
    asked.again();
  };
  return (
    <SettingsFrame title={sourceText("title")}>
      <p>{sourceText("lead")}</p>
      <DoneNotice words={said?.words ?? null} />
      <h2>{sourceText("list")}</h2>
      <ShowAnswer asked={asked} what={sourceText("what")}>
        {({ sources }) => (
          <WithNames what={sourceText("what")}>
            {(nameOf) => <Sources {...{ sources, nameOf }} done={() => done(sourceText("changed"))} />}
          </WithNames>
        )}
      </ShowAnswer>
      <section aria-labelledby="add-source" className="on-screen">
        <h2 id="add-source">{sourceText("form")}</h2>
        <AddSource key={said?.times ?? 0} done={() => done(sourceText("added"))} />
      </section>
    </SettingsFrame>
  );
}

/** A card for each, because its forms need the width of the page. */
function Sources(props: { sources: readonly ImportSource[]; nameOf: NameOf; done: () => void }): ReactNode {
  const { sources, nameOf, done } = props;
  const { time } = useSession();
  if (sources.length === 0) return <p className="notice">{sourceText("none")}</p>;
  return sources.map((source) => (
    <section
      className="card"
      key={`${source.sourceId} ${source.version}`}
      aria-labelledby={`source-${source.sourceId}`}
    >
      <h3 id={`source-${source.sourceId}`} className="first-heading">
        <Said>{source.name}</Said>
      </h3>
      <dl className="facts">
        <dt>{sourceText("emptyOrganism")}</dt>
        <dd>{sourceText(`emptyOrganism_${source.settings.emptyOrganism}`)}</dd>
        <dt>{sourceText("midnight")}</dt>
        <dd>{sourceText(`midnight_${source.settings.midnight}`)}</dd>
        <dt>{sourceText("by")}</dt>
        <dd>
          <Said>{`${nameOf(source.recordedBy)}, ${time.short(source.recordedAt)}`}</Said>
        </dd>
      </dl>
      <ChangeSource {...{ source, done }} />
      <SourceAliases {...{ source, nameOf, done }} />
    </section>
  ));
}

const nothing: SourceDraft = { name: "", ...defaultSourceSettings };

function AddSource({ done }: { done: () => void }): ReactNode {
  const { me } = useSession();
  const { draft, change, clear } = useDraft("source-new", nothing, me.personId);
  const { sending, send } = useRecording(addSource);
  const record = async (): Promise<void> => {
    const reply = await send(sourceSaid(draft));
    if (reply.state !== "answered") return;
    clear();
    done();
  };
  return (
    <RecordForm {...{ sending, record }} button={sourceText("add")} labelledBy="add-source">
      <SourceFields {...{ draft, change }} faults={faultsOf(sending)} />
    </RecordForm>
  );
}
