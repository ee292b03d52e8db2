import { describe, expect, it } from "vitest";
import { quotedCharactersMost, scanQuoted } from "../../src/csv/scan-quoted.ts";

const comma = 44;
const scan = (text: string, isLast = true) => scanQuoted({ text, start: 0, delimiter: comma, isLast });

describe("scanQuoted", () => {
  // RFC 4180, section 2, rules 6 and 7.
  it.each([
    ['"a,b",c', "a,b", 5],
    ['"a\r\nb"', "a\r\nb", 6],
    ['"a""b"\n', 'a"b', 6],
    ['"",', "", 2],
    ['""""', '"', 4],
    ['"a" \t,b', "a", 5],
  ])("reads %j", (text, value, end) => {
    expect(scan(text)).toEqual({ value, end });
  });

  it("says whether a quote is open or followed by text", () => {
    expect(scan('"a,b')).toMatchObject({ code: "csv-quote-open" });
    expect(scan('"a""')).toMatchObject({ code: "csv-quote-open" });
    expect(scan('"a" b')).toMatchObject({ code: "csv-quote" });
  });

  it("gives up where no accepted text reaches, so that an open quote does not swallow the file", () => {
    const longest = `"${"x".repeat(quotedCharactersMost - 1)}"`;
    expect(scan(longest)).toMatchObject({ end: quotedCharactersMost + 1 });
    expect(scan(`"x${longest.slice(1)}`)).toMatchObject({ code: "csv-quote-open" });
    expect(scan(`"${"x".repeat(quotedCharactersMost + 1)}`, false)).toMatchObject({ code: "csv-quote-open" });
  });

  it.each(['"a', '"a"', '"a" ', '"a""'])("cannot know yet how %j ends", (text) => {
    expect(scan(text, false)).toBeNull();
  });
});
