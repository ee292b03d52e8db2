import { expect, it } from "vitest";
import { readFacility } from "../../../shared/api/facility.ts";
import { readMe } from "../../../shared/api/people.ts";
import { readPolicy } from "../../../shared/api/policies.ts";
import { readRound } from "../../../shared/api/rounds.ts";
import { listWards } from "../../../shared/api/wards.ts";
import { call } from "../../../shared/call.ts";
import type { Endpoint, InputOf } from "../../../shared/endpoint.ts";
import { earlyQuestions } from "../../../src/web/parts/early-questions.ts";

/** The address that the contract asks an endpoint at. */
async function addressOf<E extends Endpoint>(endpoint: E, input: InputOf<E>): Promise<string> {
  let address = "";
  const send = async (url: unknown): Promise<Response> => {
    address = String(url);
    return new Response("{}");
  };
  await call(endpoint, input, { fetch: send }).catch(() => undefined);
  return address;
}

it("what is asked early is asked at the addresses of the contract, so that it is not asked again", async () => {
  const everywhere = [await addressOf(readMe, {}), await addressOf(readFacility, {}), await addressOf(listWards, {})];
  const ofRound = [await addressOf(readRound, { wardId: 31 }), await addressOf(readPolicy, { wardId: 31 })];
  expect(earlyQuestions("/wards/31/round")).toEqual([...everywhere, ...ofRound]);
  for (const address of ["/", "/months/2026-11", "/wards/31/round?day=2026-11-20", "/wards/031/round"])
    expect(earlyQuestions(address)).toEqual(everywhere);
});
