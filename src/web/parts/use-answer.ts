import { useCallback, useEffect, useState } from "react";
import { call } from "../../../shared/call.ts";
import type { Endpoint, InputOf, OutputOf } from "../../../shared/endpoint.ts";
import { AnsweredProblem } from "../../../shared/problem-document.ts";

/** What became of a question to the server. */
export type Answer<T> =
  | { readonly state: "waiting" }
  | { readonly state: "answered"; readonly value: T }
  | { readonly state: "refused"; readonly problem: AnsweredProblem }
  | { readonly state: "unreachable" };

/** An answer, and how to ask again. */
export type Asked<T> = Answer<T> & { readonly again: () => void };

const waiting = { state: "waiting" } as const;

/** Asks an endpoint when the part appears and whenever the input changes; a question that is no longer needed is dropped. */
export function useAnswer<E extends Endpoint>(endpoint: E, input: InputOf<E>): Asked<OutputOf<E>> {
  const [tries, setTries] = useState(0);
  const key = JSON.stringify([endpoint.path, input, tries]);
  const [known, setKnown] = useState<{ key: string; answer: Answer<OutputOf<E>> }>({ key, answer: waiting });

  useEffect(() => {
    const stopping = new AbortController();
    const [, asked] = JSON.parse(key) as [string, InputOf<E>, number];
    void ask(endpoint, asked, stopping.signal).then((answer) => {
      if (!stopping.signal.aborted) setKnown({ key, answer });
    });
    return () => stopping.abort();
  }, [endpoint, key]);

  const again = useCallback(() => setTries((count) => count + 1), []);
  return { ...(known.key === key ? known.answer : waiting), again };
}

async function ask<E extends Endpoint>(
  endpoint: E,
  input: InputOf<E>,
  signal: AbortSignal,
): Promise<Answer<OutputOf<E>>> {
  try {
    return { state: "answered", value: await call(endpoint, input, { signal }) };
  } catch (error) {
    if (error instanceof AnsweredProblem) return { state: "refused", problem: error };
    return { state: "unreachable" };
  }
}
