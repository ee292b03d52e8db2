import { expect, it } from "vitest";

// A mutant that keeps a file from loading would fail no test, because no test would be there.
it("the rules and the arithmetic of days can be loaded", async () => {
  const loaded = await Promise.all([
    import("../../src/domain/editions/index.ts"),
    import("../../src/domain/criteria/index.ts"),
    import("../../src/domain/days/census.ts"),
    import("../../src/domain/days/local-time.ts"),
    import("../../src/domain/days/month.ts"),
    import("../../src/domain/days/stretch.ts"),
  ]);
  expect(loaded).toHaveLength(6);
});
