import { describe, expect, it } from "vitest";
import type { ItemState } from "../../../shared/catheter-words.ts";
import { careCheckResult } from "../../../src/domain/necessity/care-check-result.ts";

const bundle = ["secured", "closed-system", "constructor"].map((code) => ({ code, label: code, source: "our unit" }));

/** Items from `secured=kept closed-system=broken`. */
function itemsFrom(text: string): Record<string, ItemState> {
  const items = text.split(" ").filter((item) => item !== "");
  return Object.fromEntries(items.map((item) => item.split("=") as [string, ItemState]));
}

describe("a care check", () => {
  it.each([
    ["secured=kept closed-system=kept constructor=kept", "kept"],
    ["secured=kept closed-system=not-applicable constructor=kept", "kept"],
    // The bundle has an item that every object seems to have.
    ["secured=kept closed-system=kept", "incomplete"],
    ["secured=kept closed-system=kept constructor=broken", "broken"],
    ["secured=broken", "broken"],
    ["", "incomplete"],
    ["secured=kept closed-system=kept constructor=kept former=kept", "kept"],
    ["secured=kept closed-system=kept constructor=kept former=broken", "broken"],
  ])("of %s is %s", (items, result) => {
    expect(careCheckResult(itemsFrom(items), { bundle })).toBe(result);
  });

  it("that says nothing is incomplete", () => {
    expect(careCheckResult(null, { bundle })).toBe("incomplete");
  });
});
