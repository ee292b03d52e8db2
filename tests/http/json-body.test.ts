import { describe, expect, it } from "vitest";
import { Problem } from "../../shared/problems.ts";
import { readJson } from "../../src/http/json-body.ts";
import { parsingCases, refusedOnPurpose } from "./parsing-cases.ts";

const bytes = (text: string) => Buffer.from(text, "utf8");

function outcome(body: Uint8Array): string {
  try {
    readJson(body);
    return "read";
  } catch (error) {
    if (!(error instanceof Problem)) throw error;
    return error.code;
  }
}

describe("the JSON parsing test suite", () => {
  it.each(parsingCases("y_"))("$name is read", ({ name, input }) => {
    expect(outcome(bytes(input))).toBe(refusedOnPurpose[name] ?? "read");
  });

  it.each(parsingCases("n_"))("$name is refused", ({ input }) => {
    expect(outcome(bytes(input))).toMatch(/^(request-unreadable|json-)/);
  });

  it.each(parsingCases("i_"))("$name is read or refused, and breaks nothing", ({ input }) => {
    expect(outcome(bytes(input))).toMatch(/^(read$|request-unreadable|json-)/);
  });

  it("is all there", () => {
    expect([parsingCases("y_").length, parsingCases("n_").length, parsingCases("i_").length]).toEqual([95, 188, 35]);
    expect(parsingCases("y_").map(({ name }) => name)).toEqual(expect.arrayContaining(Object.keys(refusedOnPurpose)));
  });
});

describe("a body", () => {
  it.each([
    ["is empty", "", "request-unreadable"],
    ["has a name twice", '{"a":1,"b":{"a":2},"a":1}', "json-name-repeated"],
    ["has a name twice, once in escapes", '{"a":1,"\\u0061":2}', "json-name-repeated"],
    ["has a name twice deep inside", '[{"x":[{"y":1,"y":1}]}]', "json-name-repeated"],
    ["reaches for the prototype", '{"__proto__":{"admin":true}}', "json-value-unusable"],
    ["reaches for the prototype in escapes", '{"\\u005f_proto__":1}', "json-value-unusable"],
    ["reaches for the constructor", '{"constructor":{"prototype":1}}', "json-value-unusable"],
    ["holds an integer that is not exact", '{"a":9007199254740993}', "json-value-unusable"],
    ["holds a number without end", '{"a":1e999}', "json-value-unusable"],
    ["holds half a character", '{"a":"\\ud800"}', "json-value-unusable"],
    ["holds the character 0", '{"a":"\\u0000"}', "json-value-unusable"],
    ["has a comment", '{"a":1 /* no */}', "request-unreadable"],
    ["has something behind it", '{"a":1} {"b":2}', "request-unreadable"],
    ["is cut off", '{"a":"', "request-unreadable"],
  ])("that %s is refused", (_, text, code) => {
    expect(outcome(bytes(text))).toBe(code);
  });

  it("may have one name in two objects, texts like names, and what is nested as deep as is ever meant", () => {
    expect(readJson(bytes('{"a":{"b":1},"c":{"b":"a"},"d":["a","a"]}'))).toEqual({
      a: { b: 1 },
      c: { b: "a" },
      d: ["a", "a"],
    });
    expect(outcome(bytes(`${"[".repeat(32)}${"]".repeat(32)}`))).toBe("read");
    expect(outcome(bytes(`${"[".repeat(33)}${"]".repeat(33)}`))).toBe("json-too-deep");
  });

  it("of ten thousand levels breaks no stack", () => {
    for (const level of ["[", '{"a":']) expect(outcome(bytes(level.repeat(10_000)))).toBe("json-too-deep");
  });

  // Sequences that are not UTF-8: the Unicode Standard, section 3.9, table 3-7.
  it.each([
    ["a byte that begins nothing", [0xff]],
    ["a byte that goes on with nothing", [0x80]],
    ["a longer form than needed", [0xc0, 0xaf]],
    ["half of a pair", [0xed, 0xa0, 0x80]],
    ["a character beyond the last", [0xf4, 0x90, 0x80, 0x80]],
    ["a character cut off by a line break", [0xe2, 0x82, 0x0a]],
    ["a character cut off by the end", [0xf0, 0x9f, 0x98]],
  ])("is refused with its line when it has %s", (_, broken) => {
    const body = Buffer.concat([bytes('{\n"a": "é€😀",\n"b": "'), Buffer.from(broken)]);
    expect(() => readJson(body)).toThrow("The body is not UTF-8, in line 3.");
    expect(outcome(body)).toBe("request-unreadable");
  });

  it("is refused in UTF-16", () => {
    expect(outcome(Buffer.from('\ufeff{"a":1}', "utf16le"))).toBe("request-unreadable");
    expect(outcome(Buffer.from('{"a":1}', "utf16le"))).toBe("request-unreadable");
  });

  it("is refused with the place, and without what was sent", () => {
    expect(() => readJson(bytes('{\n  "secret": 1,\n  "secret": 2}'))).toThrow(
      "A name is in one object twice, at line 3, column 3.",
    );
  });
});
