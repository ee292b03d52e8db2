import type { ReactNode } from "react";
import { type WardSetting, wardSetting } from "../../../../shared/vocabulary.ts";
import { numberTyped } from "../../parts/form/as-typed.ts";
import { ChoiceField } from "../../parts/form/choice-field.tsx";
import type { FieldFault } from "../../parts/form/faults.ts";
import { TextField } from "../../parts/form/text-field.tsx";
import { Term } from "../../parts/term.tsx";
import { wardText } from "../../texts/ward-settings.ts";
import { settingText } from "../../texts/words.ts";

/** What a ward is, as it is typed. */
export interface WardDraft {
  readonly name: string;
  readonly type: string;
  readonly setting: WardSetting | null;
  readonly beds: string;
}

/** What a ward is, as it is sent. */
export function wardSaid({ name, type, setting, beds }: WardDraft) {
  // A setting that nobody chose goes as none: the server says at the field that it is missing.
  return { name, type: type.trim() || null, setting: setting as WardSetting, beds: numberTyped(beds) };
}

/** The fields of what a ward is. */
export function WardFields(props: {
  draft: WardDraft;
  change: (part: Partial<WardDraft>) => void;
  faults: readonly FieldFault[];
}): ReactNode {
  const { draft, change, faults } = props;
  const { name, type, setting, beds } = draft;
  return (
    <>
      <TextField
        pointer="/name"
        label={wardText("name")}
        faults={faults}
        value={name}
        change={(value) => change({ name: value })}
      />
      <TextField
        pointer="/type"
        label={wardText("type")}
        help={wardText("typeHelp")}
        faults={faults}
        value={type}
        change={(value) => change({ type: value })}
      />
      <ChoiceField
        pointer="/setting"
        label={<Term name="setting">{wardText("setting")}</Term>}
        faults={faults}
        choices={wardSetting.options.map((value) => ({ value, label: settingText(value) }))}
        value={setting}
        change={(value) => change({ setting: value })}
        isTall
      />
      <TextField
        pointer="/beds"
        label={wardText("beds")}
        help={wardText("bedsHelp")}
        faults={faults}
        inputMode="numeric"
        value={beds}
        change={(value) => change({ beds: value })}
      />
    </>
  );
}
