import { mkdirSync, mkdtempSync, rmSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { simulateHouse } from "../demo/simulateHouse.ts";
import { writeLogs } from "../demo/writeLogs.ts";

import { type Build, buildInChild } from "./buildInChild.ts";
import { progress } from "./progress.ts";

/** Logs of the invented house as the bench wants them: how many runs over how many years. */
export interface LogsWanted {
  readonly runs: number;
  readonly years: number;
}

export interface MadeUpLogs extends LogsWanted {
  readonly folder: string;
  readonly files: readonly { readonly path: string; readonly bytes: number }[];
}

export interface MadeUpSite {
  readonly logs: MadeUpLogs;
  readonly folder: string;
  /** What this build took; the first of any repeats. */
  readonly build: Build;
}

/** The bench's own folder beside other programs' temporary ones: made-up logs and sites, each made once, taken away at the end. */
export interface Workshop {
  logs(wanted: LogsWanted): MadeUpLogs;
  site(wanted: LogsWanted): Promise<MadeUpSite>;
  /** A fresh folder's path. */
  place(name: string): string;
  clear(): void;
}

const SEED = 1;

export function openWorkshop(): Workshop {
  const root = mkdtempSync(join(tmpdir(), "piecebook-bench-"));
  const logs = new Map<string, MadeUpLogs>();
  const sites = new Map<string, Promise<MadeUpSite>>();
  let places = 0;
  const place = (name: string): string => {
    places += 1;
    return join(root, `${places}-${name}`);
  };
  const nameOf = ({ runs, years }: LogsWanted): string => `${runs}-runs-${years}-years`;

  const makeLogs = (wanted: LogsWanted): MadeUpLogs => {
    progress(`making up the logs of ${wanted.runs} runs over ${wanted.years} years …`);
    const folder = place(`logs-${nameOf(wanted)}`);
    const files: { path: string; bytes: number }[] = [];
    for (const [path, text] of writeLogs(simulateHouse({ seed: SEED, ...wanted, readings: true }))) {
      const file = join(folder, path);
      mkdirSync(dirname(file), { recursive: true });
      writeFileSync(file, text);
      files.push({ path, bytes: statSync(file).size });
    }
    return { ...wanted, folder, files };
  };

  const workshop: Workshop = {
    place,
    logs(wanted) {
      const made = logs.get(nameOf(wanted)) ?? makeLogs(wanted);
      logs.set(nameOf(wanted), made);
      return made;
    },
    site(wanted) {
      const build = async (): Promise<MadeUpSite> => {
        const made = workshop.logs(wanted);
        progress(`building the site of ${wanted.runs} runs …`);
        const folder = place(`site-${nameOf(wanted)}`);
        return { logs: made, folder, build: await buildInChild(made.folder, folder) };
      };
      const made = sites.get(nameOf(wanted)) ?? build();
      sites.set(nameOf(wanted), made);
      return made;
    },
    clear() {
      rmSync(root, { recursive: true, force: true });
    },
  };
  return workshop;
}
