import { expect, it } from "vitest";

/** Loaded outside of the test: what runs while a file is loaded belongs to no test, and every test judges it. */
const loaded = await Promise.all([
  import("../../src/domain/editions/index.ts"),
  import("../../src/domain/criteria/index.ts"),
  import("../../src/domain/days/census.ts"),
  import("../../src/domain/days/local-time.ts"),
  import("../../src/domain/days/month.ts"),
  import("../../src/domain/days/stretch.ts"),
]).catch(String);

// A mutant that keeps a file from loading would fail no other test, because no other would be there.
it("the rules and the arithmetic of days can be loaded", () => {
  expect(loaded).toHaveLength(6);
});
