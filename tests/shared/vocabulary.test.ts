import { describe, expect, it } from "vitest";
import {
  absenceKind,
  absenceKinds,
  catheterKind,
  catheterKinds,
  inSentence,
  role,
  roles,
  wardSetting,
  wardSettings,
} from "../../shared/vocabulary.ts";

const lists = [
  { name: "catheter kinds", list: catheterKinds, word: catheterKind, size: 6 },
  { name: "ward settings", list: wardSettings, word: wardSetting, size: 3 },
  { name: "absence kinds", list: absenceKinds, word: absenceKind, size: 3 },
  { name: "roles", list: roles, word: role, size: 5 },
];

describe("the closed lists", () => {
  it.each(lists)("$name: the enum holds exactly the $size words that have a label", ({ list, word, size }) => {
    expect(Object.keys(list)).toHaveLength(size);
    expect(word.options).toEqual(Object.keys(list));
  });

  it.each([
    ["Emergency department", "emergency department"],
    ["OR", "OR"],
  ])("%s is %s inside a sentence", (label, inside) => {
    expect(inSentence(label)).toBe(inside);
  });

  it.each(lists)("$name: every label is plain text of its own", ({ list }) => {
    const labels: string[] = Object.values(list);
    expect(new Set(labels).size).toBe(labels.length);
    for (const label of labels) expect(label).toMatch(/^[A-Z][^\n]{4,}$/);
  });

  it.each(lists)("$name: a word of no list is refused", ({ word }) => {
    expect(word.safeParse("foley").success).toBe(false);
    expect(word.safeParse("toString").success).toBe(false);
    expect(word.safeParse("").success).toBe(false);
  });

  it("knows unknown absence only as the lack of a kind", () => {
    expect(absenceKind.safeParse("unknown").success).toBe(false);
  });
});
