import { expect, it } from "vitest";
import { listOrganisms as endpoint } from "../../../shared/api/organisms.ts";
import { listOrganisms } from "../../../src/usecases/cultures/list-organisms.ts";

it("the list of organisms holds each name once, with its group and whether it is a common commensal", async () => {
  const { organisms, otherNames } = endpoint.output.parse(await listOrganisms());
  expect(new Set(organisms.map(({ name }) => name)).size).toBe(organisms.length);
  expect(organisms).toContainEqual({ name: "Escherichia coli", group: "bacterium", isCommensal: false });
  expect(organisms).toContainEqual({ name: "Candida albicans", group: "yeast-or-mold", isCommensal: false });
  expect(otherNames).toEqual(expect.arrayContaining(["e coli", "mixed flora", "cons"]));
  // A common commensal: CDC Patient Safety Component Manual, chapter 4, from memory.
  expect(organisms).toContainEqual({ name: "Staphylococcus epidermidis", group: "bacterium", isCommensal: true });
});
