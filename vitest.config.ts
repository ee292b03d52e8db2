import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    include: ["tests/**/*.test.{ts,tsx}"],
    pool: "forks",
    maxWorkers: 2,
    // Files share their process: each makes databases of its own, and loading everything anew for each took most of the time.
    isolate: false,
    testTimeout: 30_000,
    hookTimeout: 60_000,
    teardownTimeout: 10_000,
  },
});
