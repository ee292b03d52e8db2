import { type ReactNode, useState } from "react";
import { removeAlias } from "../../../../shared/api/import-sources.ts";
import { FieldScope, faultsOf } from "../../parts/form/faults.ts";
import { LongTextField } from "../../parts/form/text-field.tsx";
import { EntryForm } from "../../parts/form/update-form.tsx";
import type { NameOf } from "../../parts/people-names.tsx";
import { Said } from "../../parts/said.tsx";
import { useSession } from "../../parts/session.tsx";
import { useRecording } from "../../parts/use-recording.ts";
import { sourceText as text } from "../../texts/import-sources.ts";
import type { ImportSource } from "./change-source.tsx";

interface AliasesProps {
  readonly source: ImportSource;
  readonly nameOf: NameOf;
  readonly done: () => void;
}

/** What a source calls units, each with who answered so; an alias can be removed. */
export function SourceAliases({ source, nameOf, done }: AliasesProps): ReactNode {
  const { wardCode, time } = useSession();
  const { sourceId, name, aliases } = source;
  if (aliases.length === 0) return null;
  return (
    <details>
      <summary>
        {text("aliases", { count: aliases.length })} <span className="unseen">{text("aliasesOf", { name })}</span>
      </summary>
      <ul>
        {aliases.map((alias) => (
          <li key={alias.aliasId}>
            <Said>{text("alias", { code: alias.code, ward: wardCode(alias.wardId) })}</Said>{" "}
            <span className="small">
              <Said>{text("aliasBy", { who: nameOf(alias.recordedBy), when: time.short(alias.recordedAt) })}</Said>
            </span>
            <FieldScope value={`alias-${alias.aliasId}`}>
              <RemoveAlias {...{ sourceId, alias, done }} />
            </FieldScope>
          </li>
        ))}
      </ul>
    </details>
  );
}

function RemoveAlias(props: { sourceId: number; alias: ImportSource["aliases"][number]; done: () => void }): ReactNode {
  const { sourceId, alias, done } = props;
  const [reason, setReason] = useState("");
  const { wardCode } = useSession();
  const { sending, send } = useRecording(removeAlias);
  const record = async (seenVersion: number): Promise<void> => {
    const reply = await send({ sourceId, aliasId: alias.aliasId, reason, seenVersion });
    if (reply.state === "answered") done();
  };
  const meaning = (wardId: unknown): string => (typeof wardId === "number" ? wardCode(wardId) : "");
  return (
    <EntryForm
      {...{ sending, record }}
      compare={(current) => [{ label: alias.code, mine: meaning(alias.wardId), theirs: meaning(current.wardId) }]}
      again={done}
      seenVersion={alias.version}
      button={text("remove")}
      isSmall
    >
      <p className="small">{text("removeHelp")}</p>
      <LongTextField
        pointer="/reason"
        label={text("reason")}
        faults={faultsOf(sending)}
        value={reason}
        change={setReason}
      />
    </EntryForm>
  );
}
