import { defineConfig } from "vitest/config";
import { BaseSequencer, type TestSpecification } from "vitest/node";

/** The first test has to be the one that tells whether the source can be loaded at all. */
class LoadingFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    return files.toSorted((a, b) => rankOf(a) - rankOf(b) || (a.moduleId < b.moduleId ? -1 : 1));
  }
}

function rankOf({ moduleId }: TestSpecification): number {
  return moduleId.endsWith("/loading.test.ts") ? 0 : 1;
}

/** The tests that judge mutants: those of the two rooms, with few random cases, because they run thousands of times. */
export default defineConfig({
  test: {
    include: [
      "scripts/mutation/loading.test.ts",
      "tests/domain/{criteria,days}/**/*.test.ts",
      "tests/reference/determination-cases.test.ts",
    ],
    env: {
      SEED: "9",
      TIMELINES: "300",
      CHANGED: "20",
      ZONES: "America/New_York,America/St_Johns,Pacific/Apia,America/Nuuk,Europe/Dublin,Africa/Monrovia",
    },
    // Counting which mutants a test reaches makes it many times slower.
    testTimeout: 180_000,
    isolate: false,
    sequence: { sequencer: LoadingFirst },
  },
});
