import { expect } from "vitest";
import { call } from "../../shared/call.ts";
import type { Endpoint, InputOf, OutputOf } from "../../shared/endpoint.ts";
import { AnsweredProblem, type ProblemDocument } from "../../shared/problem-document.ts";
import { acknowledgeHeader } from "../../shared/signed-changes.ts";
import { publishedCodes } from "../../src/http/openapi-route.ts";
import type { TestDatabase } from "../databases/databases.ts";
import { everything } from "../databases/read-back.ts";
import type { AlderBay } from "./alder-bay.ts";
import { type Door, openDoor } from "./door.ts";

type Person = keyof AlderBay["people"];

export interface Asked {
  readonly person?: Person;
  readonly key?: string;
  readonly headers?: Readonly<Record<string, string>>;
  /** Records it even when it changes a signed month: asked, the person says that the figures are right. */
  readonly acknowledge?: true;
}

/** Somebody at a desk of Alder Bay Hospital, who asks the API by the typed client. */
export interface Desk {
  /** Where the server listens. */
  readonly base: string;
  readonly hospital: AlderBay;
  /** Asks; creations get a new key unless one is given. */
  ask<E extends Endpoint>(endpoint: E, input: InputOf<E>, asked?: Asked): Promise<OutputOf<E>>;
  /** Asks, and gives the tag that came with the answer. */
  tag<E extends Endpoint>(endpoint: E, input: InputOf<E>, asked?: Asked): Promise<string | null>;
  /** Asks for what has to be refused with published codes, and looks that nothing at all was stored. */
  refused<E extends Endpoint>(endpoint: E, input: InputOf<E>, asked?: Asked): Promise<ProblemDocument>;
  close(): Promise<void>;
}

let keys = 0;

/** Fills a fresh database and listens. */
export async function openDesk(database: TestDatabase): Promise<Desk> {
  const door: Door = await openDoor(database);
  const base = await door.app.listen({ host: "127.0.0.1", port: 0 });
  return deskAt({ base, hospital: door.hospital, close: door.close });
}

/** A desk at a server that listens already. */
export function deskAt({ base, hospital, close }: { base: string } & Pick<Desk, "hospital" | "close">): Desk {
  const send = async <E extends Endpoint>(endpoint: E, input: InputOf<E>, asked: Asked = {}) => {
    const { person = "prevention", key = `desk-${++keys}`, headers } = asked;
    let tag: string | null = null;
    const fetchTagged: typeof fetch = async (...request) => {
      const response = await fetch(...request);
      tag = response.headers.get("etag");
      return response;
    };
    const all = { "x-demo-person": String(hospital.people[person]), ...headers };
    const options = { base, headers: all, key, fetch: fetchTagged };
    const answer = await call(endpoint, input, options).catch((problem: unknown) => {
      const digits = asked.acknowledge && problem instanceof AnsweredProblem && problem.document.signed?.acknowledge;
      if (!digits) throw problem;
      return call(endpoint, input, { ...options, headers: { ...all, [acknowledgeHeader]: digits } });
    });
    return { answer, tag: tag as string | null };
  };
  return {
    base,
    hospital,
    ask: async (...asked) => (await send(...asked)).answer,
    tag: async (...asked) => (await send(...asked)).tag,
    refused: async (...asked) => {
      const before = await everything(hospital.store);
      const answer = await send(...asked).catch((error: unknown) => error);
      if (!(answer instanceof AnsweredProblem)) throw new Error(`this was not refused: ${JSON.stringify(answer)}`);
      expect(await everything(hospital.store), "a refusal stores nothing").toEqual(before);
      for (const { code } of answer.document.errors)
        expect(publishedCodes(asked[0]), `${asked[0].path} does not publish this code`).toContain(code);
      return answer.document;
    },
    close,
  };
}
