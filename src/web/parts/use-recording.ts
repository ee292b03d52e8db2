import { useCallback, useRef, useState } from "react";
import type { Endpoint, InputOf, OutputOf } from "../../../shared/endpoint.ts";
import type { SignedChanges } from "../../../shared/signed-changes.ts";
import { ask, newKey, type Reply } from "./server.ts";

/** Where something that a person records stands. */
export type Sending<T> =
  | { readonly state: "idle" }
  | { readonly state: "sending" }
  | { readonly state: "asking"; readonly changes: SignedChanges; readonly decide: (isRight: boolean) => void }
  | Reply<T>;

/**
 * Records something. What is sent again unchanged, because nobody answered, goes under the same key: so it is recorded
 * once, however often it is sent. `send` answers with the reply, which also stands in `sending`.
 * What would change a signed month waits until the person has compared the figures and decided; meanwhile it is `asking`.
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
  const decideLast = useRef<((isRight: boolean) => void) | null>(null);
  const send = useCallback(
    async (input: InputOf<E>) => {
      decideLast.current?.(false);
      const text = JSON.stringify(input);
      if (last.current?.text !== text) last.current = { text, key: newKey() };
      const { key } = last.current;
      for (let acknowledged: string | null = null; ; ) {
        setSending({ state: "sending" });
        const reply = await ask(endpoint, input, { key, acknowledged });
        const changes = changesIn(reply);
        if (changes) {
          const isRight = await new Promise<boolean>((decide) => {
            decideLast.current = decide;
            setSending({ state: "asking", changes, decide });
          });
          decideLast.current = null;
          acknowledged = changes.acknowledge;
          if (isRight) continue;
        }
        if (reply.state !== "unreachable") last.current = null;
        setSending(changes ? { state: "idle" } : reply);
        return reply;
      }
    },
    [endpoint],
  );
  const forget = useCallback(() => setSending({ state: "idle" }), []);
  return { sending, send, forget };
}

/** What a refusal says about signed months; undefined for any other reply. */
function changesIn(reply: Reply<unknown>): SignedChanges | undefined {
  return reply.state === "refused" ? reply.problem.document.signed : undefined;
}
