import { useCallback, useRef, useState } from "react";
import type { Endpoint, InputOf, OutputOf } from "../../../shared/endpoint.ts";
import { ask, newKey, type Reply } from "./server.ts";

/** Where something that a person records stands. */
export type Sending<T> = { readonly state: "idle" } | { readonly state: "sending" } | Reply<T>;

/**
 * Records something. What is sent again unchanged, because nobody answered, goes under the same key: so it is recorded
 * once, however often it is sent. `send` answers with the reply, which also stands in `sending`.
 */
export function useRecording<E extends Endpoint>(
  endpoint: E,
): {
  readonly sending: Sending<OutputOf<E>>;
  readonly send: (input: InputOf<E>) => Promise<Reply<OutputOf<E>>>;
  readonly forget: () => void;
} {
  const [sending, setSending] = useState<Sending<OutputOf<E>>>({ state: "idle" });
  const last = useRef<{ text: string; key: string } | null>(null);
  const send = useCallback(
    async (input: InputOf<E>) => {
      const text = JSON.stringify(input);
      if (last.current?.text !== text) last.current = { text, key: newKey() };
      setSending({ state: "sending" });
      const reply = await ask(endpoint, input, { key: last.current.key });
      if (reply.state !== "unreachable") last.current = null;
      setSending(reply);
      return reply;
    },
    [endpoint],
  );
  const forget = useCallback(() => setSending({ state: "idle" }), []);
  return { sending, send, forget };
}
