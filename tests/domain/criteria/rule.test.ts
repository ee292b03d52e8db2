import { expect, it } from "vitest";
import { sourceText } from "../../../src/domain/criteria/index.ts";

it.each([
  [{ document: "Protocol", basis: "read" }, "Protocol"],
  [{ document: "Protocol", basis: "read", readIn: "its second printing" }, "Protocol (read in its second printing)"],
  [{ document: "Protocol", basis: "from memory" }, "Protocol (from memory)"],
  [{ document: "Nobody says it", basis: "our reading" }, "Nobody says it (our reading)"],
] as const)("the source %j is told as %s", (source, text) => {
  expect(sourceText(source)).toBe(text);
});
