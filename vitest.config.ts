import { defineConfig } from "vitest/config";
import { BaseSequencer, type TestSpecification } from "vitest/node";

/** The longest files, longest first: begun last, one of them would keep a single worker busy while the other waits. */
const longest = [
  "tests/ledger/random-edits",
  "tests/browser/all-pages",
  "tests/storm/requests",
  "tests/documented-commands",
  "tests/commands/import-killed",
  "tests/http/isolation",
  "tests/storm/kills",
  "tests/http/naughty-identifiers",
  "tests/storm/pairs",
  "tests/storm/races",
  "tests/browser/",
  "tests/main",
];

class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const sorted = await super.sort(files);
    const rankOf = ({ moduleId }: TestSpecification) => {
      const rank = longest.findIndex((path) => moduleId.includes(`/${path}`));
      return rank === -1 ? longest.length : rank;
    };
    return sorted.toSorted((a, b) => rankOf(a) - rankOf(b));
  }
}

export default defineConfig({
  test: {
    include: ["tests/**/*.test.{ts,tsx}"],
    pool: "forks",
    maxWorkers: 2,
    // Files share their process: each makes databases of its own, and loading everything anew for each took most of the time.
    isolate: false,
    sequence: { sequencer: LongestFirst },
    testTimeout: 30_000,
    hookTimeout: 60_000,
    teardownTimeout: 10_000,
  },
});
