import { fileURLToPath } from "node:url";
import { defineConfig } from "astro/config";
import { engineAssets } from "./src/engine/engineAssets.ts";

/**
 * The one policy for every page of the owner's site. Scripts and styles come from the site itself; the engine needs
 * `wasm-unsafe-eval`, a worker made from a blob (so that this policy binds it) and blob: addresses to hand it its module.
 */
const directives = [
  "default-src 'none'",
  "img-src 'self' data:",
  "font-src 'self'",
  "connect-src 'self' blob:",
  "worker-src 'self' blob:",
  "base-uri 'none'",
  "form-action 'self'",
];

export default defineConfig({
  srcDir: "src",
  publicDir: "src/static",
  outDir: "dist",
  trailingSlash: "always",
  build: { format: "directory", assets: "assets", inlineStylesheets: "never" },
  compressHTML: true,
  devToolbar: { enabled: false },
  markdown: { syntaxHighlight: false },
  security: {
    csp: {
      directives,
      scriptDirective: { resources: ["'self'", "'wasm-unsafe-eval'"] },
      styleDirective: { resources: ["'self'"] },
    },
  },
  integrations: [engineAssets()],
  vite: {
    // The live part and its worker are large and fetched only when they are wanted.
    build: { sourcemap: false, assetsInlineLimit: 0, chunkSizeWarningLimit: 1000 },
    resolve: {
      alias: {
        "@stdlib/assert-has-generator-support": fileURLToPath(
          new URL("./src/client/hasGeneratorSupport.cjs", import.meta.url),
        ),
      },
    },
    worker: { format: "es" },
  },
});
