import { describe, expect, it } from "vitest";
import { pseudo } from "../../../src/web/texts/pseudo.ts";

describe("the pseudo-language", () => {
  it("gives accents, makes a text longer by a third, and keeps what is filled in", () => {
    const text = pseudo("Round of {{ward}}");
    expect(text).toMatch(/^\[Röûñd öf \{\{ward\}\}( ~)+\]$/);
    expect(text.length).toBeGreaterThan("Round of {{ward}}".length * 1.3);
  });
});
