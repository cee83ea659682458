// npm test: lint and format, types, then every test. Each step is named before it runs, and the first that fails ends it.

import { spawnSync } from "node:child_process";

const steps: readonly { name: string; args: readonly string[] }[] = [
  { name: "Lint and format", args: ["node_modules/@biomejs/biome/bin/biome", "check", "--error-on-warnings", "."] },
  // Of all of tsconfig.json's files, TypeScript and pages alike.
  { name: "Types", args: ["node_modules/astro/bin/astro.mjs", "check", "--minimumFailingSeverity", "warning"] },
  { name: "Tests", args: ["node_modules/vitest/vitest.mjs", "run", "--config", "tests/vitest.config.ts"] },
];

for (const { name, args } of steps) {
  console.log(`\n${name}`);
  const { status } = spawnSync(process.execPath, args, { stdio: "inherit", env: { ...process.env, TZ: "UTC" } });
  if (status !== 0) {
    console.error(`\n${name}: failed.`);
    process.exit(status ?? 1);
  }
}
