import { serializerCompiler } from "fastify-type-provider-zod";
import { endpoints } from "../../../shared/api/index.ts";
import type { Endpoint } from "../../../shared/endpoint.ts";
import type { DocumentMaker } from "../../documents/document-maker.ts";
import type { AuditBy } from "../../store/audit.ts";
import type { Actor, Store } from "../../usecases/act.ts";
import type { Reach } from "../../usecases/reach.ts";
import { type Route, routes } from "../routes.ts";

/** A read of an endpoint that is `heavy`, as plain data that another thread can be handed. */
export interface HeavyRead {
  /** The endpoint's name. */
  readonly name: string;
  readonly input: object;
  readonly actor: Actor;
  readonly reach: Reach;
  readonly now: number;
  /** The answer is wanted as the text of its JSON. */
  readonly asText: boolean;
}

/**
 * What a heavy read came to: the answer with the views that have to be stored before it is sent; or null when something
 * has to be written first, which a reader cannot do.
 */
export type HeavyAnswer = { readonly answer: string | object; readonly views: readonly AuditBy[] } | null;

/** What takes long: reads that grow with the facility, and files made of their answers. */
export interface HeavyWork extends DocumentMaker {
  read(asked: HeavyRead): Promise<HeavyAnswer>;
  close(): Promise<void>;
}

/** Thrown by a read that has something to write first; never leaves this file. */
class WritesFirst extends Error {}

/** Does the work on the thread that asks, one piece at a time being the business of whoever asks. The store stays open. */
export function heavyWorkHere({ store, documents }: { store: Store; documents: DocumentMaker }): HeavyWork {
  return {
    make: (document, type) => documents.make(document, type),
    close: () => Promise.resolve(),
    read: async ({ name, input, actor, reach, now, asText }) => {
      const views: AuditBy[] = [];
      const reading: Store = {
        ...store,
        tx: () => Promise.reject(new WritesFirst("a heavy read may not write")),
        noteView: async (by, view) => void views.push({ by, ...view }),
      };
      // The casts are safe: only endpoints ask, by their names, with an input that their schemas read.
      const endpoint: Endpoint = endpoints[name as keyof typeof endpoints];
      const route = routes[name as keyof typeof endpoints] as Route<Endpoint>;
      try {
        const answer = (await route({ store: reading, actor, now }, input as never, reach)) as object;
        // Cloned where no thread lies between too, so that what cannot be handed over is found everywhere.
        return { answer: asText ? textOf(endpoint, answer) : structuredClone(answer), views };
      } catch (thrown) {
        if (thrown instanceof WritesFirst) return null;
        throw thrown;
      }
    },
  };
}

/** The text that the service sends for an answer: checked by the contract, as all answers are. */
function textOf({ output, method, path }: Endpoint, answer: object): string {
  return serializerCompiler({ schema: output, method, url: path })(answer);
}
