import { apiBase } from "../../../shared/api-base.ts";
import { personHeaders } from "./played-person.ts";

const asked = new Map<string, Promise<Response>>();

/** What every page asks first, and what the round asks when the address is one. */
export function earlyQuestions(address: string): string[] {
  const ward = /^\/wards\/([1-9]\d{0,9})\/round$/.exec(address)?.[1];
  const ofRound = ward === undefined ? [] : [`/wards/${ward}/round`, `/wards/${ward}/policy`];
  return ["/me", "/facility", "/wards", ...ofRound].map((path) => apiBase + path);
}

/**
 * Asks before the page itself has begun: on a slow network and a slow device the answers come while the page is still
 * being read. Knows addresses alone and nothing of the contract, which is read later.
 */
export function askEarly(address: string): void {
  for (const question of earlyQuestions(address)) {
    const reply = fetch(question, { headers: { accept: "application/json", ...personHeaders() } });
    // Whoever takes the reply hears of a server that is not there.
    reply.catch(() => undefined);
    asked.set(question, reply);
  }
}

/** `fetch`, but the first who asks what was asked early gets that reply; later ones ask anew. */
export const fetchOrTake: typeof fetch = (url, init) => {
  const question = init?.method === "GET" && typeof url === "string" ? url : "";
  const early = asked.get(question);
  asked.delete(question);
  return early ?? fetch(url, init);
};
