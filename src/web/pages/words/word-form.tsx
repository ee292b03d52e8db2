import { type ReactNode, useState } from "react";
import { chooseLaboratoryWords, type listLaboratoryWords } from "../../../../shared/api/laboratory-words.ts";
import type { listOrganisms } from "../../../../shared/api/organisms.ts";
import { organismGroup } from "../../../../shared/culture-words.ts";
import type { OutputOf } from "../../../../shared/endpoint.ts";
import { countChoices } from "../../../../shared/laboratory-words.ts";
import { SelectField } from "../../parts/form/choice-field.tsx";
import { FieldScope, faultsOf } from "../../parts/form/faults.ts";
import { RecordForm } from "../../parts/form/record-form.tsx";
import { useRecording } from "../../parts/use-recording.ts";
import { organismGroupText } from "../../texts/culture-words.ts";
import { countChoiceText, wordsText } from "../../texts/laboratory-words.ts";

export type Word = OutputOf<typeof listLaboratoryWords>["words"][number];
export type Listed = OutputOf<typeof listOrganisms>["organisms"];

/** Chooses what a wording means: a group or a listed organism, or on which side of the limit a count is. */
export function WordForm(props: { word: Word; listed: Listed; done: (words: string) => void }): ReactNode {
  const { word, listed, done } = props;
  const { column, wording, number } = word;
  const [choice, setChoice] = useState<string | null>(word.choice);
  const { sending, send } = useRecording(chooseLaboratoryWords);
  const record = async (): Promise<void> => {
    const reply = await send({ words: [{ column, wording, choice, replaces: number }] });
    if (reply.state === "answered") done(wordsText("saved"));
  };
  return (
    <FieldScope value={`word-${column}-${wording}`}>
      <RecordForm
        {...{ sending, record }}
        button={wordsText("save")}
        isReady={choice !== null && choice !== word.choice}
        isSmall
      >
        <SelectField
          pointer="/words/0/choice"
          label={wordsText("choiceOf", { wording })}
          faults={faultsOf(sending)}
          choices={choicesFor(word, listed)}
          empty={wordsText("open")}
          value={choice}
          change={setChoice}
        />
      </RecordForm>
    </FieldScope>
  );
}

function choicesFor({ column, proposal }: Word, listed: Listed): { value: string; label: string }[] {
  if (column === "count")
    return (Object.keys(countChoices) as (keyof typeof countChoices)[]).map((value) => ({
      value,
      label: countChoiceText(value),
    }));
  const names = listed.map(({ name }) => name).filter((name) => name !== proposal);
  return [
    ...(proposal === null ? [] : [{ value: proposal, label: proposal }]),
    ...organismGroup.options.map((value) => ({ value, label: organismGroupText(value) })),
    ...names.map((name) => ({ value: name, label: name })),
  ];
}

/** What a choice means, in words. */
export function choiceWords({ column, choice }: Pick<Word, "column" | "choice">): string {
  if (choice === null) return wordsText("withdrawn");
  if (column === "count") return countChoiceText(choice as keyof typeof countChoices);
  const group = organismGroup.safeParse(choice);
  return group.success ? organismGroupText(group.data) : choice;
}
