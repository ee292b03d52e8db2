import { type ReactNode, useState } from "react";
import { recordCareCheck } from "../../../../shared/api/notes.ts";
import type { ItemState } from "../../../../shared/catheter-words.ts";
import type { PolicyItem } from "../../../../shared/policy.ts";
import { DraftNotice } from "../../parts/draft-notice.tsx";
import { faultsOf } from "../../parts/form/faults.ts";
import { RecordForm } from "../../parts/form/record-form.tsx";
import { LongTextField } from "../../parts/form/text-field.tsx";
import { TimeField } from "../../parts/form/time-field.tsx";
import { useSession } from "../../parts/session.tsx";
import { useDraft } from "../../parts/use-draft.ts";
import { useRecording } from "../../parts/use-recording.ts";
import { careText } from "../../texts/care.ts";
import { BundleItem } from "./bundle-item.tsx";
import { CareDone } from "./care-done.tsx";

/** What was looked at so far. */
export interface CareDraft {
  readonly at: string;
  readonly items: Readonly<Record<string, ItemState>>;
  readonly remark: string;
}

/** Each item of the bundle: kept, not kept, does not apply, or not looked at. */
export function CareForm(props: {
  catheterId: number;
  bundle: readonly PolicyItem[];
  patientId: number;
  wardId: number;
}): ReactNode {
  const { catheterId, bundle } = props;
  const { me, time, now } = useSession();
  const [began] = useState((): CareDraft => ({ at: time.charted(now()), items: {}, remark: "" }));
  const { draft, change, clear, wasKept } = useDraft(`care-${catheterId}`, began, me.personId);
  const { sending, send } = useRecording(recordCareCheck);
  const record = async (): Promise<void> => {
    const remark = draft.remark.trim();
    const reply = await send({ catheterId, at: draft.at, items: draft.items, ...(remark === "" ? {} : { remark }) });
    if (reply.state === "answered") clear();
  };
  if (sending.state === "answered") return <CareDone {...props} draft={draft} />;
  const faults = faultsOf(sending);
  return (
    <RecordForm {...{ sending, record }} button={careText("record")}>
      {wasKept && <DraftNotice drop={() => change(began)} />}
      <p>{careText("lead")}</p>
      <Items {...{ bundle, faults, draft, change }} />
      <TimeField
        pointer="/at"
        label={careText("at")}
        faults={faults}
        value={draft.at}
        change={(at) => change({ at })}
      />
      <LongTextField
        pointer="/remark"
        label={careText("remark")}
        faults={faults}
        maxLength={500}
        value={draft.remark}
        change={(remark) => change({ remark })}
      />
    </RecordForm>
  );
}

function Items(props: {
  bundle: readonly PolicyItem[];
  faults: ReturnType<typeof faultsOf>;
  draft: CareDraft;
  change: (part: Partial<CareDraft>) => void;
}): ReactNode {
  const { bundle, faults, draft, change } = props;
  const allKept = Object.fromEntries(bundle.map(({ code }) => [code, "kept" as const]));
  return (
    <>
      <p>
        <button type="button" onClick={() => change({ items: allKept })}>
          {careText("all")}
        </button>
      </p>
      {bundle.map((item) => (
        <BundleItem
          key={item.code}
          item={item}
          faults={faults}
          value={draft.items[item.code] ?? null}
          change={(state) => change({ items: withItem(draft.items, item.code, state) })}
        />
      ))}
    </>
  );
}

function withItem(items: CareDraft["items"], code: string, state: ItemState | null): CareDraft["items"] {
  const others = Object.entries(items).filter(([other]) => other !== code);
  return Object.fromEntries(state === null ? others : [...others, [code, state]]);
}
