import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { Problem } from "../../shared/problems.ts";
import { readJson } from "../../src/http/json-body.ts";

function refusal(text: string): string {
  try {
    readJson(Buffer.from(text, "utf8"));
    return "read";
  } catch (error) {
    if (!(error instanceof Problem)) throw error;
    return `${error.code}: ${error.message}`;
  }
}

describe("a number", () => {
  // 17 digits name every 64-bit number, and the largest exact integer is 2^53 - 1: IEEE 754, and RFC 8259, section 6.
  it.each([
    ["0.10", 0.1],
    ["0.10000000000000001", 0.1],
    ["1E22", 1e22],
    ["0e99", 0],
    ["-0.0", -0],
    ["5e-324", 5e-324],
    ["1.7976931348623157e308", Number.MAX_VALUE],
    ["9007199254740991", Number.MAX_SAFE_INTEGER],
    ["-9007199254740991", Number.MIN_SAFE_INTEGER],
    ["12.500000000000000000000000000", 12.5],
  ])("%s is read", (text, value) => {
    expect(readJson(Buffer.from(text))).toBe(value);
  });

  it.each([
    "9007199254740992",
    "-9007199254740993",
    "9007199254740993.0",
    "90071992547409930e-1",
    "3.141592653589793238",
    "1e999",
    "-1e999",
    "1e-400",
    `1e${"9".repeat(400)}`,
    `0.${"0".repeat(200_000)}1`,
    `1${"0".repeat(200_000)}.5`,
  ])("%.30s is refused, because it would be kept as another one", (text) => {
    expect(refusal(`[\n ${text}]`)).toBe(
      "json-value-unusable: A number is too large or too long to be kept exactly, at line 2, column 2.",
    );
  });

  it("of a body's length is refused without long work", { timeout: 5000 }, () => {
    expect(refusal(`0.1${"0".repeat(255_000)}1`)).toMatch(/^json-value-unusable: /);
  });

  it("is read as it was printed, whatever 64-bit number it is", () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (value) => {
        fc.pre(!Number.isInteger(value) || Number.isSafeInteger(value));
        for (const text of [String(value), value.toExponential(), value.toPrecision(17)])
          expect(readJson(Buffer.from(text))).toBe(Number(text));
      }),
    );
  });

  it("is refused when it is an integer that the next one is mistaken for", () => {
    const beyond = fc.bigInt({ min: 2n ** 53n, max: 2n ** 80n });
    fc.assert(
      fc.property(beyond, (value) => {
        expect(refusal(`${value}`)).toMatch(/^json-value-unusable: /);
      }),
    );
  });
});

describe("a text that is not JSON", () => {
  it.each([
    ["[1,]", 1, 4],
    ['{"a":1,\r\n"b" 2}', 2, 5],
    ['{"a":1', 1, 7],
    ['{\n"a": "b', 2, 6],
    ["[1]\n// why", 2, 1],
    ["{'a':1}", 1, 2],
    ["[tru]", 1, 2],
    ["[NaN]", 1, 2],
    ["\ufeff\ufeff[]", 1, 1],
  ])("is refused at its place: %j", (text, line, column) => {
    expect(refusal(text)).toBe(`request-unreadable: The body is not valid JSON, at line ${line}, column ${column}.`);
  });

  it.each(["[},", "[}[},", '{"a":]', '{"a"}{', "[{]}"])("breaks no stack when it is long: %s", (part) => {
    expect(refusal(part.repeat(50_000))).toMatch(/^(request-unreadable|json-too-deep): .* line 1, column \d+\.$/);
  });
});

const forbidden = ["__proto__", "constructor", "prototype"];
const name = fc
  .string({ unit: "binary" })
  .filter((text) => !text.includes("\0") && !forbidden.includes(text) && Buffer.from(text).toString() === text);
const plain = fc.letrec((tie) => ({
  value: fc.oneof({ maxDepth: 4 }, tie("leaf"), tie("list"), tie("object")),
  leaf: fc.oneof(name, fc.integer(), fc.boolean(), fc.constant(null)),
  list: fc.array(tie("value"), { maxLength: 4 }),
  object: fc.dictionary(name, tie("value"), { maxKeys: 4, noNullPrototype: true }),
})).value;

describe("any JSON", () => {
  it("is read as the platform's parser reads it", () => {
    fc.assert(
      fc.property(plain, fc.constantFrom("", " ", "\t", "\n"), (value, space) => {
        const text = JSON.stringify(value, null, space);
        expect(readJson(Buffer.from(text))).toEqual(JSON.parse(text));
      }),
    );
  });

  it("is refused once a name stands twice in it, however deep and however the name is written", () => {
    fc.assert(
      fc.property(name, plain, plain, fc.nat({ max: 12 }), (twice, one, other, levels) => {
        const units = Array.from({ length: twice.length }, (_, at) => twice.charCodeAt(at));
        const escaped = units.map((unit) => `\\u${unit.toString(16).padStart(4, "0")}`).join("");
        for (const again of [JSON.stringify(twice), `"${escaped}"`]) {
          const object = `{${JSON.stringify(twice)}:${JSON.stringify(one)},${again}:${JSON.stringify(other)}}`;
          expect(refusal('[{"in":'.repeat(levels) + object + "}]".repeat(levels))).toMatch(/^json-name-repeated: /);
        }
      }),
    );
  });

  it("is read or refused with its place after any damage, as the platform's parser reads it", () => {
    const damage = fc.tuple(
      fc.nat(),
      fc.nat({ max: 3 }),
      fc.constantFrom("", '"', "{", "}", "[", "]", ",", ":", "\\", "\0", "/*"),
    );
    fc.assert(
      fc.property(plain, fc.array(damage, { minLength: 1, maxLength: 3 }), (value, damages) => {
        let text = JSON.stringify(value);
        for (const [at, gone, instead] of damages) {
          const place = at % (text.length + 1);
          text = text.slice(0, place) + instead + text.slice(place + gone);
        }
        // A pair of surrogates that was cut apart is no longer the same text in UTF-8.
        text = Buffer.from(text).toString();
        fc.pre(text !== "");
        const found = refusal(text);
        if (found !== "read") expect(found).toMatch(/^(request-unreadable|json-[a-z-]+): .* line \d+, column \d+\.$/);
        else expect(JSON.stringify(readJson(Buffer.from(text)))).toBe(JSON.stringify(JSON.parse(text)));
      }),
      { numRuns: 2000 },
    );
  });
});
