import type { ReactNode } from "react";
import type { PolicyItem } from "../../../../shared/policy.ts";
import type { FieldFault } from "../../parts/form/faults.ts";
import { TextField } from "../../parts/form/text-field.tsx";
import { policyText } from "../../texts/policy-rules.ts";
import { type ItemDraft, itemDraft } from "./policy-draft.ts";

interface ItemListProps {
  /** The JSON pointer of the list. */
  readonly pointer: string;
  readonly faults: readonly FieldFault[];
  readonly items: readonly ItemDraft[];
  readonly change: (items: readonly ItemDraft[]) => void;
  /** Items that many units have, to be added with one touch. */
  readonly known: readonly PolicyItem[];
}

/** One of a policy's lists: each item with its words and its source. */
export function ItemList(props: ItemListProps): ReactNode {
  const { pointer, faults, items, change } = props;
  return (
    <>
      {items.map((item, i) => (
        <ItemFields
          key={item.key}
          pointer={`${pointer}/${i}`}
          {...{ item, faults }}
          number={i + 1}
          change={(part) => change(items.map((one) => (one === item ? { ...one, ...part } : one)))}
          remove={() => change(items.filter((one) => one !== item))}
        />
      ))}
      <Adding {...props} />
    </>
  );
}

function ItemFields(props: {
  pointer: string;
  item: ItemDraft;
  number: number;
  faults: readonly FieldFault[];
  change: (part: Partial<ItemDraft>) => void;
  remove: () => void;
}): ReactNode {
  const { pointer, item, number, faults, change, remove } = props;
  return (
    <fieldset className="card item-fields">
      <legend>{policyText("item", { number })}</legend>
      {item.isNew && (
        <TextField
          pointer={`${pointer}/code`}
          label={policyText("code")}
          help={policyText("codeHelp")}
          faults={faults}
          value={item.code}
          change={(code) => change({ code })}
        />
      )}
      {(["label", "source"] as const).map((name) => (
        <TextField
          key={name}
          pointer={`${pointer}/${name}`}
          label={policyText(name)}
          faults={faults}
          value={item[name]}
          change={(value) => change({ [name]: value })}
        />
      ))}
      <button type="button" onClick={remove}>
        {policyText("remove", { number })}
      </button>
    </fieldset>
  );
}

function Adding({ pointer, items, change, known }: ItemListProps): ReactNode {
  const left = known.filter(({ code }) => items.every((item) => item.code !== code));
  const id = `add${pointer.replaceAll("/", "-")}`;
  const addKnown = (code: string): void => {
    const item = left.find((one) => one.code === code);
    if (item) change([...items, itemDraft(item)]);
  };
  return (
    <div className="row">
      {left.length > 0 && (
        <>
          <label htmlFor={id}>{policyText("addKnown")}</label>
          <select id={id} value="" onChange={(event) => addKnown(event.target.value)}>
            <option value="">{policyText("choose")}</option>
            {left.map(({ code, label }) => (
              <option key={code} value={code}>
                {label}
              </option>
            ))}
          </select>
        </>
      )}
      <button
        type="button"
        onClick={() => change([...items, itemDraft({ code: "", label: "", source: "" }, { isNew: true })])}
      >
        {policyText("addOwn")}
      </button>
    </div>
  );
}
