import { fileURLToPath } from "node:url";
import type { AstroIntegration } from "astro";
import { writeEngineAssets } from "./writeEngineAssets.ts";

/** Puts the engine's files into the built site. */
export function engineAssets(): AstroIntegration {
  return {
    name: "engine-assets",
    hooks: {
      "astro:build:done": async ({ dir }) => {
        await writeEngineAssets(fileURLToPath(dir));
      },
    },
  };
}
