import type { ReactNode } from "react";
import { Said } from "../../parts/said.tsx";
import { wordsText } from "../../texts/laboratory-words.ts";
import { type Listed, type Word, WordForm } from "./word-form.tsx";

/** Wordings without a choice, each with its form. */
export function WaitingWords(props: {
  words: readonly Word[];
  listed: Listed;
  done: (words: string) => void;
}): ReactNode {
  const { words, listed, done } = props;
  if (words.length === 0) return <p className="notice">{wordsText("noneWaiting")}</p>;
  return (
    <ul className="plain-list">
      {words.map((word) => (
        <li key={`${word.column} ${word.wording} ${word.number}`} className="card">
          <h3>
            <Said>{word.wording}</Said>
          </h3>
          <p className="small">
            {wordsText(word.column)} · {wordsText("specimens")}: {word.specimens}
            {word.proposal !== null && <> · {wordsText("proposal", { name: word.proposal })}</>}
          </p>
          <WordForm {...{ word, listed, done }} />
        </li>
      ))}
    </ul>
  );
}
