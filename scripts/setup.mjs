// Plain JavaScript for Node 18, since this is what runs before anything else is there. It installs the packages when
// they are missing or stale, finds a Node that Astro can run on, finds a browser when asked, and then starts the script.
//
//   node scripts/setup.mjs [--browser] scripts/start.ts [arguments]
//   node scripts/setup.mjs --bin biome check .

import { spawn, spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const root = dirname(dirname(fileURLToPath(import.meta.url)));
const stampFile = join(root, "node_modules", ".installed-from");
const NEEDED_NODE = [22, 12];

/** The package that brings Node for this machine, where there is one. */
const nodePackage = `node-${process.platform === "win32" ? "win" : process.platform}-${process.arch}`;
const { optionalDependencies } = JSON.parse(readFileSync(join(root, "package.json"), "utf8"));
const comesWithNode = nodePackage in optionalDependencies;

/** Ends with one sentence that says what is missing and what to type. */
function stop(sentence) {
  console.error(`\n${sentence}\n`);
  process.exit(1);
}

function lockDigest() {
  return createHash("sha256")
    .update(readFileSync(join(root, "package-lock.json")))
    .digest("hex");
}

function installPackages() {
  const wanted = lockDigest();
  if (existsSync(stampFile) && readFileSync(stampFile, "utf8") === wanted) return;
  console.log("Installing packages (once, and again when package-lock.json changes) …");
  const windows = process.platform === "win32";
  const env = { ...process.env };
  if (comesWithNode && !isNewEnough(process.version)) {
    const preload = `--require ${JSON.stringify(join(root, "scripts", "npmNode.cjs"))}`;
    env.NODE_OPTIONS = [env.NODE_OPTIONS, preload].filter(Boolean).join(" ");
  }
  const done = spawnSync(windows ? "npm.cmd" : "npm", ["ci", "--include=optional", "--no-audit", "--no-fund"], {
    cwd: root,
    env,
    stdio: "inherit",
    shell: windows,
  });
  if (done.error) stop(`npm could not be started (${done.error.message}): install npm, then try again.`);
  if (done.status !== 0)
    stop("npm could not install the packages: see its message above; a network is needed this once.");
  writeFileSync(stampFile, wanted);
}

function isNewEnough(version) {
  const [major = 0, minor = 0] = version.replace(/^v/, "").split(".").map(Number);
  return major > NEEDED_NODE[0] || (major === NEEDED_NODE[0] && minor >= NEEDED_NODE[1]);
}

/** The Node that came with the packages where there is one for this machine, else the one we run on. */
function findNode() {
  const name = process.platform === "win32" ? "node.exe" : "node";
  const bundled = join(root, "node_modules", nodePackage, "bin", name);
  if (existsSync(bundled)) return bundled;
  if (isNewEnough(process.version)) return process.execPath;
  return stop(
    `Node ${NEEDED_NODE.join(".")} or later is needed and none comes with the packages for ${process.platform}-${process.arch}; ` +
      `this is ${process.version}. Install a newer Node, then try again.`,
  );
}

const BROWSER_PLACES = [
  "/usr/bin/chromium",
  "/usr/bin/chromium-browser",
  "/usr/bin/google-chrome",
  "/snap/bin/chromium",
  "/Applications/Chromium.app/Contents/MacOS/Chromium",
  "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
];

function findBrowser() {
  const named = process.env.CHROMIUM_PATH;
  if (named) {
    return existsSync(named) ? named : stop(`CHROMIUM_PATH names ${named}, but there is no such file.`);
  }
  const found = BROWSER_PLACES.find(existsSync);
  if (found) return found;
  if (existsSync("/etc/debian_version") && process.getuid?.() === 0) {
    console.log("Installing Chromium for the browser tests …");
    const quiet = {
      stdio: ["ignore", "ignore", "inherit"],
      env: { ...process.env, DEBIAN_FRONTEND: "noninteractive" },
    };
    spawnSync("apt-get", ["update", "-qq"], quiet);
    spawnSync("apt-get", ["install", "-y", "-qq", "chromium"], quiet);
    if (existsSync("/usr/bin/chromium")) return "/usr/bin/chromium";
  }
  return stop(
    "The browser tests need Chromium and none was found. On Debian type: sudo apt-get install chromium. " +
      "Elsewhere set CHROMIUM_PATH to the program.",
  );
}

const args = process.argv.slice(2);
installPackages();
const node = findNode();
const env = { ...process.env, ASTRO_TELEMETRY_DISABLED: "1" };
if (args[0] === "--browser") {
  args.shift();
  env.CHROMIUM_PATH = findBrowser();
}
const bins = { biome: "@biomejs/biome/bin/biome", astro: "astro/bin/astro.mjs" };
const bin = args[0] === "--bin" ? args.splice(0, 2)[1] : null;
if (bin !== null && !(bin in bins)) stop(`setup knows no program named ${bin}.`);
const program = bin === null ? args : [join(root, "node_modules", bins[bin]), ...args];

const child = spawn(node, program, { cwd: root, stdio: "inherit", env });
for (const signal of ["SIGINT", "SIGTERM"]) process.on(signal, () => child.kill(signal));
child.on("error", (error) => stop(`${node} could not be started: ${error.message}.`));
child.on("exit", (code, signal) => process.exit(code ?? (signal ? 1 : 0)));
