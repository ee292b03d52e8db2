import { createScanner, type JSONScanner, visit } from "jsonc-parser";
import { type ProblemCode, refuse } from "../../shared/problems.ts";

/** Kinds of tokens, and the error "none", by the numbers that jsonc-parser declares for them (lib/esm/main.d.ts). */
const token = { openBrace: 1, closeBrace: 2, openBracket: 3, closeBracket: 4, comma: 5, text: 10, number: 11, end: 17 };
const noError = 0;

/** No request that is meant is nested deeper. */
const deepest = 32;

/** Names that would reach the prototype of an object, were it ever copied carelessly. */
const forbidden = new Set(["__proto__", "constructor", "prototype"]);

/** An object or list that is open; lists have no names. */
type Open = Set<string> | null;

/**
 * Goes through the tokens of a JSON text, one after another and without calling itself, and refuses what a plain parser
 * lets through or breaks on. Whether the text is JSON at all is left to that parser.
 */
export function checkJsonTokens(text: string): void {
  const scanner = createScanner(text, true);
  const open: Open[] = [];
  let nameIsNext = false;
  for (let kind: number = scanner.scan(); kind !== token.end; kind = scanner.scan()) {
    if (kind === token.openBrace || kind === token.openBracket) {
      open.push(kind === token.openBrace ? new Set() : null);
      if (open.length > deepest) refuseAt(scanner, "json-too-deep", `The body is nested deeper than ${deepest} levels`);
    } else if (kind === token.closeBrace || kind === token.closeBracket) open.pop();
    else if (kind === token.text) checkText(scanner, nameIsNext ? (open.at(-1) ?? null) : null);
    else if (kind === token.number) checkNumber(scanner);
    const begins = kind === token.openBrace || kind === token.comma;
    nameIsNext = begins && open.at(-1) instanceof Set;
  }
}

/** `names`: those of the object, when the text is a name in it. */
function checkText(scanner: JSONScanner, names: Open): void {
  // A string that is not closed is left to the parser.
  if (Number(scanner.getTokenError()) !== noError) return;
  const value = scanner.getTokenValue();
  if (/\p{Cs}|\0/u.test(value))
    refuseAt(scanner, "json-value-unusable", "A text holds half a character, or the character of code 0");
  if (names === null) return;
  if (forbidden.has(value)) refuseAt(scanner, "json-value-unusable", "A name of an object is not allowed");
  if (names.has(value)) refuseAt(scanner, "json-name-repeated", "A name is in one object twice");
  names.add(value);
}

/** A number that is kept as another one than was written is a slip, or an attack; so is one without end. */
function checkNumber(scanner: JSONScanner): void {
  if (isKept(scanner.getTokenValue())) return;
  refuseAt(scanner, "json-value-unusable", "A number is too large or too long to be kept exactly");
}

/** Programs print up to 17 digits of a fraction that they hold as 64 bits (IEEE 754), though fewer would name it. */
const digitsOfFraction = 17;

function isKept(text: string): boolean {
  const value = Number(text);
  if (!Number.isFinite(value)) return false;
  // The neighbors of a larger one cannot be told from it, even where it is exact itself.
  if (/^-?\d+$/.test(text)) return Number.isSafeInteger(value);
  const [written, kept] = [decimal(text), decimal(String(value))];
  if (written.digits === kept.digits && written.power === kept.power) return true;
  return !Number.isInteger(value) && written.digits.length <= digitsOfFraction;
}

/** The digits of a decimal number without zeros around them, and the power of ten behind them. */
function decimal(text: string): { digits: string; power: number } {
  const [, whole = "", fraction = "", power = "0"] = /^-?(\d+)(?:\.(\d+))?(?:e([+-]?\d+))?$/i.exec(text) ?? [];
  const all = (whole + fraction).replace(/^0+/, "");
  // Looking behind keeps the time linear in the number of zeros.
  const digits = all.replace(/(?<!0)0+$/, "");
  return { digits, power: digits === "" ? 0 : Number(power) - fraction.length + all.length - digits.length };
}

/**
 * Refuses `request-unreadable` at the place where a text stops being JSON, for a text that {@link checkJsonTokens} has
 * passed: jsonc-parser's walk calls itself for each level, and stops here at the first fault, so it goes no deeper.
 */
export function refuseBrokenJson(text: string): never {
  visit(
    text,
    {
      onError: (_error, _offset, _length, line, column) => refuseBroken(`, at line ${line + 1}, column ${column + 1}`),
    },
    { disallowComments: true },
  );
  return refuseBroken("");
}

function refuseBroken(place: string): never {
  return refuse("request-unreadable", `The body is not valid JSON${place}.`);
}

function refuseAt(scanner: JSONScanner, code: ProblemCode, what: string): never {
  const [line, column] = [scanner.getTokenStartLine() + 1, scanner.getTokenStartCharacter() + 1];
  return refuse(code, `${what}, at line ${line}, column ${column}.`);
}
