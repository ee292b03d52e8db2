import { describe, expect, it } from "vitest";
import { z } from "zod";
import { call } from "../../shared/call.ts";
import { day } from "../../shared/day.ts";
import { endpoint } from "../../shared/endpoint.ts";
import { AnsweredProblem, documentOf } from "../../shared/problem-document.ts";
import { Problem } from "../../shared/problems.ts";
import { idInPath } from "../../shared/wire.ts";

const put = endpoint({
  method: "PUT",
  path: "/wards/{wardId}/days/{day}/note",
  summary: "",
  permission: "see-wards",
  wards: "ward",
  reply: "json",
  params: { wardId: idInPath, day },
  query: { draft: z.string().optional() },
  body: { text: z.string() },
  output: z.strictObject({ saved: z.boolean() }),
  errors: [],
});

const input = { wardId: 12, day: day.parse("2026-11-04"), text: "a/b", draft: "1&2=3 é" };

/** Calls with a network that gives this answer; returns what was sent and what came of it. */
async function callWith(answer: () => Response, given = input) {
  const sent: { url: string; init: RequestInit | undefined }[] = [];
  const network: typeof fetch = async (url, init) => {
    sent.push({ url: String(url), init });
    return answer();
  };
  const result = await call(put, given, { base: "http://server", fetch: network }).catch((error: unknown) => error);
  return { sent, result };
}

describe("call", () => {
  it("puts each part of the input where the contract says", async () => {
    const { sent, result } = await callWith(() => Response.json({ saved: true }));
    expect(result).toEqual({ saved: true });
    const url = new URL(sent[0]?.url ?? "");
    expect(url.pathname).toBe("/api/v1/wards/12/days/2026-11-04/note");
    expect([...url.searchParams]).toEqual([["draft", "1&2=3 é"]]);
    expect(sent[0]?.init).toMatchObject({ method: "PUT", body: '{"text":"a/b"}' });
    expect(new Headers(sent[0]?.init?.headers).get("content-type")).toBe("application/json");
  });

  it("sends a body as it was written when the contract would refuse it: the server says what is wrong", async () => {
    const given = { ...input, text: 12 as never };
    const { sent } = await callWith(() => Response.json({ saved: true }), given);
    expect(sent[0]?.init?.body).toBe('{"text":12}');
  });

  it("does not send to an address that the contract would refuse", async () => {
    const { sent, result } = await callWith(() => Response.json({ saved: true }), { ...input, wardId: -1 });
    expect(result).toBeInstanceOf(Error);
    expect(sent).toEqual([]);
  });

  it("throws a refusal as the problem that it is, with all faults and the number of the request", async () => {
    const problem = new Problem(
      { code: "field-missing", pointer: "/text", detail: "This is missing." },
      { code: "stay-overlaps", pointer: "", detail: "Two stays.", other: "stay 7" },
    );
    const document = documentOf(problem, "r-1");
    const { result } = await callWith(() => Response.json(document, { status: 422 }));
    if (!(result instanceof AnsweredProblem)) throw result;
    expect([result.code, result.document.instance]).toEqual(["field-missing", "r-1"]);
    expect(result.faults.map(({ code, pointer, other }) => [code, pointer, other])).toEqual([
      ["field-missing", "/text", undefined],
      ["stay-overlaps", "", "stay 7"],
    ]);
  });

  it.each([
    ["a page of a proxy", () => new Response("<h1>Bad Gateway</h1>", { status: 502 }), "502"],
    ["an answer of another version", () => Response.json({ saved: true, by: "me" }), "200"],
    ["an empty answer", () => new Response(null, { status: 204 }), "204"],
  ])("takes %s for no answer", async (_what, answer, status) => {
    const { result } = await callWith(answer);
    expect(result).toBeInstanceOf(Error);
    expect(result).not.toBeInstanceOf(Problem);
    expect(String(result)).toContain(status);
  });
});

describe("a problem document", () => {
  it("has the members of RFC 9457 and our own", () => {
    const document = documentOf(new Problem({ code: "not-found", pointer: "/wardId", detail: "None." }), "r-1");
    expect(document).toEqual({
      type: "urn:dwell-ledger:problem:not-found",
      title: "This does not exist here",
      status: 404,
      detail: "None.",
      instance: "r-1",
      code: "not-found",
      errors: [{ pointer: "/wardId", code: "not-found", detail: "None.", remedy: expect.stringMatching(/\.$/) }],
    });
  });
});
