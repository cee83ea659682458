import { chmodSync, readFileSync, renameSync, statSync, writeFileSync } from "node:fs";
import { join, relative, resolve } from "node:path";
import { logFolder } from "../../src/engine/logFolder.ts";
import { counted } from "../../src/findings/counted.ts";
import { readSharingSources } from "../../src/report/sharing/readSharingSources.ts";
import type { BatchInQuestion, CustomerBefore, SharedBefore } from "../../src/report/sharing/sharedBefore.ts";
import type { SharingSources } from "../../src/report/sharing/sharingSources.ts";
import { passHouse } from "../../src/shared/projection.ts";
import { makeSeal, type Seal } from "../../src/shared/seal.ts";
import { shareable } from "../../src/shared/shareable.ts";
import type { SharedHouse } from "../../src/shared/sharedSite.ts";
import { declaredOf } from "../../src/tables/fileOf.ts";
import { printIsoDate } from "../../src/units/instant.ts";
import { DEMO_LOGS } from "../buildSite.ts";
import { buildShared, mayReplace } from "./buildShared.ts";
import { chooseKeys } from "./chooseKeys.ts";
import { chooseSeals } from "./chooseSeals.ts";
import { withKeys } from "./customersFile.ts";
import { heldBackReasons, rowsLost, stopsSharing } from "./heldBack.ts";
import { batchRef } from "./keys.ts";
import { listChanges, readLastShare, writeLastShare } from "./lastShare.ts";
import { readPassphrases, writePassphrases } from "./passphraseFile.ts";
import { shownFigures } from "./sharedFigures.ts";

export interface ShareOptions {
  /** The folder of logs, and the folder that the pages are written to. */
  readonly logs: string;
  readonly out: string;
  /** Where the pages will be found; null: as last time, or nowhere yet. */
  readonly address: string | null;
  readonly newKeys: readonly string[];
  readonly sealAll: boolean;
  readonly sealFor: readonly string[];
  readonly openFor: readonly string[];
  /** File that keeps the passphrases; null: they are shown once. */
  readonly passphrases: string | null;
  /** Runs to share in spite of what speaks against it. */
  readonly despite: readonly string[];
  /** The present, milliseconds UTC. */
  readonly now: number;
  /** Hears what is being done, as it begins: a share takes its time. */
  readonly says: (step: string) => void;
}

/** One customer's pages, as the command's last words tell of them. */
export interface CustomerShared {
  readonly customer: string;
  readonly key: string;
  readonly batches: number;
  readonly sealed: boolean;
  /** The passphrase where it was made now, to be shown this once. */
  readonly newPassphrase: string | null;
}

export interface Shared {
  readonly customers: readonly CustomerShared[];
  readonly record: SharedBefore;
  /** Rows set aside that may be missing from pages. */
  readonly lost: readonly string[];
  readonly newKeys: number;
  /** True for the invented house, whose folder is left as it is. */
  readonly trial: boolean;
}

/** The base address with a closing slash. @throws {RangeError} for anything but a plain web address */
export function baseAddress(text: string): string {
  const url = URL.canParse(text) ? new URL(text) : null;
  const plain =
    url !== null && /^https?:$/.test(url.protocol) && url.search === "" && url.hash === "" && url.username === "";
  if (url === null || !plain) {
    throw new RangeError(`--address ${text}: a plain web address is wanted, such as https://malt.example/batches/`);
  }
  return url.href.endsWith("/") ? url.href : `${url.href}/`;
}

const isInside = (folder: string, path: string): boolean => {
  const way = relative(resolve(folder), resolve(path));
  return way === "" || (!way.startsWith("..") && resolve(folder, way) === resolve(path));
};

function writeKeys(logs: string, house: SharingSources["house"], toWrite: ReadonlyMap<number, string>): void {
  if (toWrite.size === 0) return;
  const path = join(logs, "customers.csv");
  const { encoding, delimiter } = declaredOf(house, "customers.csv");
  const written = withKeys(readFileSync(path), toWrite, { encoding, delimiter });
  const { mode } = statSync(path);
  writeFileSync(`${path}.new`, written);
  chmodSync(`${path}.new`, mode);
  renameSync(`${path}.new`, path);
}

/**
 * Batches that something speaks against, of those that customers who share were sent. What the owner shared in spite of the
 * same reasons before stays shared; a new reason has to be heard.
 */
function inQuestion(
  sources: SharingSources,
  despite: readonly string[],
  before: SharedBefore | null,
): readonly BatchInQuestion[] {
  const sharing = new Set(sources.customers.filter(({ share }) => share).map(({ customer }) => customer));
  const sent = new Set(
    sources.deliveries.filter((row) => sharing.has(row.customer) && row.product === "malt").map(({ run }) => run),
  );
  for (const run of despite)
    if (!sent.has(run)) throw new RangeError(`--despite ${run}: no customer who shares was sent malt of that batch`);
  return [...heldBackReasons(sources)]
    .filter(([run]) => sent.has(run))
    .map(([run, reasons]) => {
      const heard = before?.inQuestion.find((one) => one.run === run && one.shared)?.reasons ?? [];
      return { run, reasons, shared: despite.includes(run) || reasons.every((reason) => heard.includes(reason)) };
    })
    .sort((a, b) => (a.run < b.run ? -1 : 1));
}

/**
 * Reads a house's logs, writes the customers' pages, and writes back what has to be kept: new keys into customers.csv, the
 * record of what was shown beside it, passphrases where the owner wants them. The invented house's folder is only read.
 *
 * @throws {RangeError} with a sentence for the owner, before anything is written
 */
export async function share(options: ShareOptions): Promise<Shared> {
  const trial = resolve(options.logs) === resolve(DEMO_LOGS);
  if (!mayReplace(resolve(options.out)) || isInside(options.out, options.logs)) {
    throw new RangeError(`${options.out} holds files that a share did not make; give another folder with --out`);
  }
  if (options.passphrases !== null && isInside(options.out, options.passphrases)) {
    throw new RangeError(`--passphrases ${options.passphrases} lies among the pages that go out; choose another place`);
  }
  const before = trial ? null : readLastShare(options.logs);
  options.says("Reading the logs …");
  const sources = await readSharingSources(logFolder(options.logs), { now: options.now });
  const stops = stopsSharing(sources.problems);
  if (stops.length > 0) throw new RangeError(`nothing is shared until this is mended. ${stops.join(" ")}`);

  const { customers, house } = sources;
  const { keys, toWrite } = chooseKeys(customers, new Set(options.newKeys));
  const known = options.passphrases === null ? new Map<string, string>() : readPassphrases(options.passphrases);
  const { passphrases, made } = chooseSeals(customers, {
    all: options.sealAll,
    seal: new Set(options.sealFor),
    open: new Set(options.openFor),
    known,
    before,
  });
  const questions = inQuestion(sources, options.despite, before);
  const address = options.address === null ? (before?.address ?? null) : baseAddress(options.address);
  const sharedHouse: SharedHouse = { ...passHouse(house), address, invented: trial };
  const sharing = customers.filter((row) => row.share);
  const seals = new Map<string, Seal>();
  for (const [customer, words] of passphrases) seals.set(customer, await makeSeal(words));
  const pages = shareable(sources, {
    keyOf: ({ customer }) => keys.get(customer) ?? "",
    sealOf: ({ customer }) => seals.get(customer) ?? null,
    refOf: batchRef,
    heldBack: new Set(questions.filter(({ shared }) => !shared).map(({ run }) => run)),
  });

  const on = printIsoDate(options.now, house.timeZone);
  const nowShown = Object.fromEntries(
    sharing.map(({ customer }, at): [string, CustomerBefore] => {
      const page = pages[at];
      const runs = new Map(sources.runs.map(({ run }) => [batchRef(keys.get(customer) ?? "", run), run]));
      const batches = (page?.batches ?? []).map((batch) => [
        runs.get(batch.ref) ?? batch.ref,
        shownFigures(batch, sharedHouse),
      ]);
      const since = before?.customers[customer]?.since ?? on;
      return [customer, { since, sealed: passphrases.has(customer), batches: Object.fromEntries(batches) }];
    }),
  );
  const changes = listChanges(before, { customers: nowShown });
  const record: SharedBefore = { version: 1, on, address, customers: nowShown, inQuestion: questions, changes };

  if (!trial) {
    writeKeys(options.logs, house, toWrite);
    if (options.passphrases !== null) writePassphrases(options.passphrases, new Map([...known, ...passphrases]));
  }
  const batches = pages.reduce((sum, page) => sum + page.batches.length, 0);
  options.says(`Writing the pages of ${counted(batches, "batch", "batches")} …`);
  await buildShared({ house: sharedHouse, customers: pages }, options.out);
  if (!trial) writeLastShare(options.logs, record);
  return {
    customers: sharing.map(({ customer }, at) => ({
      customer,
      key: keys.get(customer) ?? "",
      batches: pages[at]?.batches.length ?? 0,
      sealed: passphrases.has(customer),
      newPassphrase: made.has(customer) ? (passphrases.get(customer) ?? null) : null,
    })),
    record,
    lost: rowsLost(sources.problems),
    newKeys: toWrite.size,
    trial,
  };
}
