import { describe, expect, it } from "vitest";
import { idempotencyKey, seenVersion } from "../../src/http/request-headers.ts";
import { faultsOf } from "../databases/refusal.ts";

describe("the key of a creation", () => {
  it.each(["a", "01890a5d-ac96-774b-bcce-b302099a8057", "~!@#$%^&*()", "x".repeat(200)])("may be %.40s", (key) => {
    expect(idempotencyKey(key)).toBe(key);
  });

  it.each([
    [undefined, "idempotency-key-missing"],
    ["", "idempotency-key-missing"],
    ["two words", "idempotency-key-unreadable"],
    ["x".repeat(201), "idempotency-key-unreadable"],
    ["é", "idempotency-key-unreadable"],
    [["a", "b"], "idempotency-key-unreadable"],
  ])("is refused when it is %j", async (header, code) => {
    expect(await codeOf(() => idempotencyKey(header))).toBe(code);
  });
});

describe("the version that was seen", () => {
  it.each([
    ['"1"', 1],
    ['"999999999"', 999_999_999],
  ])("is read from %s", (header, version) => {
    expect(seenVersion(header)).toBe(version);
  });

  it.each([
    [undefined, "version-missing"],
    ["", "version-missing"],
    ["*", "version-unreadable"],
    ["1", "version-unreadable"],
    ['W/"1"', "version-unreadable"],
    ['"0"', "version-unreadable"],
    ['"01"', "version-unreadable"],
    ['"1", "2"', "version-unreadable"],
    ['"9999999999"', "version-unreadable"],
  ])("is refused when it is %j", async (header, code) => {
    expect(await codeOf(() => seenVersion(header))).toBe(code);
  });
});

async function codeOf(act: () => unknown): Promise<string> {
  return (await faultsOf(act))[0]?.code ?? "";
}
