import { type ReactNode, useState } from "react";
import { listLaboratoryWords } from "../../../../shared/api/laboratory-words.ts";
import { listOrganisms } from "../../../../shared/api/organisms.ts";
import { WithNames } from "../../parts/people-names.tsx";
import { ShowAnswer } from "../../parts/show-answer.tsx";
import { useAnswer } from "../../parts/use-answer.ts";
import { wordsText } from "../../texts/laboratory-words.ts";
import { DoneNotice } from "../settings/done-notice.tsx";
import { SettingsFrame } from "../settings/settings-frame.tsx";
import { choicesCsv } from "./choices-csv.ts";
import { ChosenWords } from "./chosen-words.tsx";
import { ImportChoices } from "./import-choices.tsx";
import { WaitingWords } from "./waiting-words.tsx";

/** Wordings of the laboratory that are not read by themselves, and what the facility chose for them. */
export function WordsPage(): ReactNode {
  const asked = useAnswer(listLaboratoryWords, {});
  const organisms = useAnswer(listOrganisms, {});
  const [said, setSaid] = useState<string | null>(null);
  const done = (words: string): void => {
    setSaid(words);
    asked.again();
  };
  const listed = organisms.state === "answered" ? organisms.value.organisms : [];
  return (
    <SettingsFrame title={wordsText("title")}>
      <p>{wordsText("lead")}</p>
      <DoneNotice words={said} />
      <ShowAnswer asked={asked} what={wordsText("what")}>
        {({ words }) => (
          <WithNames what={wordsText("what")}>
            {(nameOf) => (
              <>
                <h2>{wordsText("waiting")}</h2>
                <WaitingWords words={words.filter(({ choice }) => choice === null)} {...{ listed, done }} />
                <h2>{wordsText("chosen")}</h2>
                <ChosenWords words={words.filter(({ choice }) => choice !== null)} {...{ listed, done, nameOf }} />
                <p className="on-screen">
                  <a
                    className="button"
                    href={`data:text/csv;charset=utf-8,${encodeURIComponent(choicesCsv(words))}`}
                    download="laboratory-words.csv"
                  >
                    {wordsText("export")}
                  </a>
                </p>
              </>
            )}
          </WithNames>
        )}
      </ShowAnswer>
      <ImportChoices done={done} />
    </SettingsFrame>
  );
}
