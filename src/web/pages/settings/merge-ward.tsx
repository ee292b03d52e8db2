import { type ReactNode, useState } from "react";
import { mergeWards, voidWard } from "../../../../shared/api/wards.ts";
import { goTo } from "../../parts/address.ts";
import { numberTyped } from "../../parts/form/as-typed.ts";
import { SelectField } from "../../parts/form/choice-field.tsx";
import { FieldScope, faultsOf } from "../../parts/form/faults.ts";
import { RecordForm } from "../../parts/form/record-form.tsx";
import { LongTextField } from "../../parts/form/text-field.tsx";
import type { NameOf } from "../../parts/people-names.tsx";
import { Said } from "../../parts/said.tsx";
import { useSession } from "../../parts/session.tsx";
import { useRecording } from "../../parts/use-recording.ts";
import { mergeWardText as text } from "../../texts/merge-ward.ts";
import type { WardTold } from "./ward-page.tsx";

/** Merges a ward into another one, or marks one without entries as entered in error; closed until a person opens it. */
export function MergeWard({ ward }: { ward: WardTold }): ReactNode {
  return (
    <details>
      <summary>{text("summary")}</summary>
      <FieldScope value="merge">
        <Merge ward={ward} />
      </FieldScope>
      <FieldScope value="void">
        <EnteredInError ward={ward} />
      </FieldScope>
    </details>
  );
}

function Merge({ ward }: { ward: WardTold }): ReactNode {
  const { wards, renew } = useSession();
  const [intoWardId, setInto] = useState<string | null>(null);
  const [reason, setReason] = useState("");
  const { sending, send } = useRecording(mergeWards);
  const faults = faultsOf(sending);
  const record = async (): Promise<void> => {
    const reply = await send({ wardId: ward.wardId, intoWardId: numberTyped(intoWardId ?? ""), reason });
    if (reply.state !== "answered") return;
    renew();
    goTo(`/settings/wards/${reply.value.wardId}`);
  };
  const others = wards.filter(({ wardId }) => wardId !== ward.wardId);
  return (
    <section aria-labelledby="merge-ward">
      <h3 id="merge-ward">{text("merge")}</h3>
      <p>{text("mergeLead")}</p>
      <RecordForm {...{ sending, record }} button={text("mergeRecord")} labelledBy="merge-ward" isSmall>
        <SelectField
          pointer="/intoWardId"
          label={text("into")}
          faults={faults}
          choices={others.map(({ wardId, code, name }) => ({
            value: String(wardId),
            label: code === name ? code : `${code} ${name}`,
          }))}
          value={intoWardId}
          change={setInto}
          empty={text("choose")}
        />
        <LongTextField pointer="/reason" label={text("reason")} faults={faults} value={reason} change={setReason} />
      </RecordForm>
    </section>
  );
}

function EnteredInError({ ward }: { ward: WardTold }): ReactNode {
  const { renew } = useSession();
  const [reason, setReason] = useState("");
  const { sending, send } = useRecording(voidWard);
  const record = async (): Promise<void> => {
    const reply = await send({ wardId: ward.wardId, reason });
    if (reply.state !== "answered") return;
    renew();
    goTo("/settings/wards");
  };
  return (
    <section aria-labelledby="void-ward">
      <h3 id="void-ward">{text("void")}</h3>
      <p>{text("voidLead")}</p>
      <RecordForm {...{ sending, record }} button={text("voidRecord")} labelledBy="void-ward" isSmall>
        <LongTextField
          pointer="/reason"
          label={text("reason")}
          faults={faultsOf(sending)}
          value={reason}
          change={setReason}
        />
      </RecordForm>
    </section>
  );
}

/** The wards that were merged into this one. */
export function MergedWards({ ward, nameOf }: { ward: WardTold; nameOf: NameOf }): ReactNode {
  const { time } = useSession();
  if (ward.merged.length === 0) return null;
  return (
    <section aria-labelledby="merged-wards">
      <h2 id="merged-wards">{text("merged")}</h2>
      <ul>
        {ward.merged.map(({ wardId, code, reason, mergedAt, mergedBy }) => (
          <li key={wardId}>
            <Said>{text("mergedLine", { code, who: nameOf(mergedBy), when: time.short(mergedAt) })}</Said>{" "}
            <Said>{reason ?? ""}</Said>
          </li>
        ))}
      </ul>
    </section>
  );
}
