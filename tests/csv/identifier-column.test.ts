import { describe, expect, it } from "vitest";
import { IdentifierColumn } from "../../src/csv/identifier-column.ts";

function columnOf(...texts: string[]): IdentifierColumn {
  const column = new IdentifierColumn();
  for (const [index, text] of texts.entries()) column.add(text, { file: "stays.csv", line: index + 2 });
  return column;
}

const seen = (line: number) => ({ file: "stays.csv", line });

describe("IdentifierColumn", () => {
  it("finds numbers that differ by zeros at the front alone, however many zeros and whichever came first", () => {
    expect(columnOf("007", "8", "7", "08", "0007", "7").pairs).toEqual({ count: 2, first: [seen(4), seen(2)] });
    expect(columnOf("0", "000").pairs).toEqual({ count: 1, first: [seen(2), seen(3)] });
    expect(columnOf("12345678901234567890", "0012345678901234567890").pairs?.count).toBe(1);
  });

  it("does not mind equal numbers, other texts, and zeros inside or at the end", () => {
    expect(columnOf("7", "7", "70", "700", "0X7", "X7", "7.0", "").pairs).toBeNull();
    expect(columnOf("007", "007", "0008").pairs).toBeNull();
  });

  it("finds shorter numbers beside numbers of one length with zeros at the front", () => {
    expect(columnOf("000123", "456789", "4567", "98").shorter).toEqual({ length: 6, first: seen(4) });
    expect(columnOf("000123", "456789", "1234567").shorter).toBeNull();
    expect(columnOf("000123", "00123", "7").shorter).toBeNull();
    expect(columnOf("123", "7").shorter).toBeNull();
  });

  it("finds long numbers of which all end in zeros behind the 15th digit", () => {
    expect(columnOf("1234567890123450", "9876543210987650", "12").isCut).toBe(true);
    expect(columnOf("1234567890123450", "9876543210987651").isCut).toBe(false);
    expect(columnOf("1234567890123450").isCut).toBe(false);
    expect(columnOf("100", "200").isCut).toBe(false);
  });

  it("keeps a bounded number of them and still compares the lengths", () => {
    const column = new IdentifierColumn();
    for (let number = 0; number < 100_001; number++) column.add(`1${number}`, seen(number));
    column.add("01100000", seen(1));
    column.add("0199", seen(2));
    expect(column.pairs).toEqual({ count: 1, first: [seen(99), seen(2)] });
    expect(column.shorter).toBeNull();
  });
});
