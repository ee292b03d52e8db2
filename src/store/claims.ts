import pg from "pg";
import type { Claim } from "./store.ts";

/** Sets our advisory locks apart from those of others on the same server. */
const lockSpace = 727_073;

/** Claims in a database that one process owns: they last as long as it does. */
export function claimsInProcess(): (id: number) => Promise<Claim | null> {
  const taken = new Set<number>();
  return async (id) => {
    if (taken.has(id)) return null;
    taken.add(id);
    return {
      release: async () => {
        taken.delete(id);
      },
    };
  };
}

/** Claims on a PostgreSQL server, each held by a connection of its own: the server frees it when the process dies. */
export function claimsOnServer(url: string): (id: number) => Promise<Claim | null> {
  return async (id) => {
    const client = new pg.Client({ connectionString: url });
    // A connection that breaks ends the claim; whoever relies on it finds out when it writes.
    client.on("error", () => undefined);
    let isTaken = false;
    try {
      await client.connect();
      const { rows } = await client.query("SELECT pg_try_advisory_lock($1, $2) AS taken", [lockSpace, id]);
      isTaken = rows[0]?.taken === true;
    } finally {
      if (!isTaken) await client.end();
    }
    return isTaken ? { release: () => client.end() } : null;
  };
}
