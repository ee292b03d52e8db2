import { useCallback, useEffect, useState } from "react";
import type { Endpoint, InputOf, OutputOf } from "../../../shared/endpoint.ts";
import { ask, type Reply } from "./server.ts";

/** What became of a question to the server. */
export type Answer<T> = { readonly state: "waiting" } | Reply<T>;

/** An answer, and how to ask again: what is known stays on the page until the new answer is there. */
export type Asked<T> = Answer<T> & { readonly again: () => void };

interface Known<T> {
  readonly question: string;
  /** Which of the tries was answered last. */
  readonly tries: number;
  readonly answer: Answer<T>;
  readonly isOld: boolean;
}

const waiting = { state: "waiting" } as const;

/**
 * Asks an endpoint when the part appears and whenever the input changes; a question that is no longer needed is dropped.
 * When it is asked again and nobody answers, what was known before stays, and `isOld` says so.
 */
export function useAnswer<E extends Endpoint>(
  endpoint: E,
  input: InputOf<E>,
): Asked<OutputOf<E>> & { readonly isOld: boolean } {
  const [tries, setTries] = useState(0);
  const question = JSON.stringify([endpoint.path, input]);
  const [known, setKnown] = useState<Known<OutputOf<E>>>({ question, tries, answer: waiting, isOld: false });

  useEffect(() => {
    const stopping = new AbortController();
    const [, asked] = JSON.parse(question) as [string, InputOf<E>];
    void ask(endpoint, asked, { signal: stopping.signal }).then((answer) => {
      if (stopping.signal.aborted) return;
      setKnown((before) => {
        const isKnown = before.question === question && before.answer.state === "answered";
        if (isKnown && answer.state === "unreachable") return { ...before, tries, isOld: true };
        return { question, tries, answer, isOld: false };
      });
    });
    return () => stopping.abort();
  }, [endpoint, question, tries]);

  const again = useCallback(() => setTries((count) => count + 1), []);
  const { answer, isOld } = known.question === question ? known : { answer: waiting, isOld: false };
  return { ...answer, isOld, again };
}
