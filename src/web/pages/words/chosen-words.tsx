import type { ReactNode } from "react";
import type { NameOf } from "../../parts/people-names.tsx";
import { Said } from "../../parts/said.tsx";
import { useSession } from "../../parts/session.tsx";
import { wordsText } from "../../texts/laboratory-words.ts";
import { ApplyWord } from "./apply-word.tsx";
import { choiceWords, type Listed, type Word, WordForm } from "./word-form.tsx";

interface ChosenProps {
  readonly words: readonly Word[];
  readonly listed: Listed;
  readonly done: (words: string) => void;
  readonly nameOf: NameOf;
}

/** The choices of the facility: who made each, when, and whether past specimens follow it. */
export function ChosenWords({ words, ...rest }: ChosenProps): ReactNode {
  if (words.length === 0) return <p className="notice">{wordsText("noneChosen")}</p>;
  return (
    <ul className="plain-list">
      {words.map((word) => (
        <Chosen key={`${word.column} ${word.wording} ${word.number}`} {...{ word, ...rest }} />
      ))}
    </ul>
  );
}

function Chosen({ word, listed, done, nameOf }: Omit<ChosenProps, "words"> & { word: Word }): ReactNode {
  const { time } = useSession();
  const { column, wording, specimens, isForPast, past, recordedAt, recordedBy } = word;
  return (
    <li className="card">
      <h3>
        <Said>{wording}</Said>
      </h3>
      <p>
        <strong>{choiceWords(word)}</strong>
      </p>
      <p className="small">
        {wordsText(column)} · {wordsText("specimens")}: {specimens} · {wordsText("past")}:{" "}
        {past === null ? wordsText(isForPast ? "pastYes" : "pastNo") : wordsText("pastPartly", past)}
        {recordedBy !== null && recordedAt !== null && (
          <>
            {" "}
            · {wordsText("by")} <Said>{nameOf(recordedBy)}</Said>, {time.short(recordedAt)}
          </>
        )}
      </p>
      <details className="on-screen">
        <summary>{wordsText("change")}</summary>
        <WordForm {...{ word, listed, done }} />
      </details>
      {specimens > 0 && (!isForPast || past !== null) && (
        <details className="on-screen" open={past !== null}>
          <summary>{wordsText("applyOpen")}</summary>
          <ApplyWord {...{ word, done }} />
        </details>
      )}
    </li>
  );
}
