import { availableParallelism } from "node:os";
import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

/** Two kinds of test: those of the code alone, and those that drive a real browser over one build of the site. */
export default defineConfig({
  test: {
    projects: [
      {
        root: here(".."),
        test: {
          name: "unit",
          include: ["tests/**/*.test.ts", "tests/**/*.test.tsx"],
          exclude: ["tests/browser/**"],
          setupFiles: [here("support/matchers.ts"), here("support/propertySeed.ts")],
          env: { TZ: "UTC" },
          // No file leaves anything behind that another could read, and loading the code anew for each takes most of the time.
          isolate: false,
          maxWorkers: availableParallelism(),
          // Nothing is timed here: a slow machine is no fault of the code.
          testTimeout: 120_000,
          hookTimeout: 120_000,
        },
      },
      {
        root: here(".."),
        test: {
          name: "browser",
          include: ["tests/browser/**/*.test.ts"],
          setupFiles: [here("support/matchers.ts")],
          globalSetup: [here("support/builtSite.ts")],
          env: { TZ: "UTC" },
          testTimeout: 400_000,
          hookTimeout: 400_000,
          // What a page shows in the end is asked, not how soon: an engine alone takes long to start on a busy machine.
          expect: { poll: { timeout: 60_000 } },
          fileParallelism: false,
        },
      },
    ],
  },
});
