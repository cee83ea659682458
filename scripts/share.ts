// npm run share -- --logs DIR: writes each sharing customer's pages into dist-shared/, to be put on any static host.
//
//   --out DIR               another folder for the pages
//   --address URL           where they will be found; printed as a code on every batch sheet, and remembered
//   --new-key CUSTOMER      a new link; the old one leads nowhere
//   --seal                  seal every customer's pages; --seal-for CUSTOMER one customer's; --open-for CUSTOMER leave open
//   --passphrases FILE      keep passphrases there; without it each new one is shown once
//   --despite RUN           share a batch that something speaks against

import { existsSync } from "node:fs";
import { counted } from "../src/findings/counted.ts";
import { DEMO_LOGS } from "./buildSite.ts";
import { readOptions } from "./readOptions.ts";
import { type Shared, share } from "./share/share.ts";

const USAGE = `npm run share -- --logs DIR [--out DIR] [--address URL] [--new-key CUSTOMER] [--seal]
  [--seal-for CUSTOMER] [--open-for CUSTOMER] [--passphrases FILE] [--despite RUN]`;

const values = readOptions(USAGE, {
  logs: { type: "string", default: DEMO_LOGS },
  out: { type: "string", default: "dist-shared" },
  address: { type: "string" },
  "new-key": { type: "string", multiple: true, default: [] },
  seal: { type: "boolean", default: false },
  "seal-for": { type: "string", multiple: true, default: [] },
  "open-for": { type: "string", multiple: true, default: [] },
  passphrases: { type: "string" },
  despite: { type: "string", multiple: true, default: [] },
});

function printQuestions({ record }: Shared): void {
  const held = record.inQuestion.filter(({ shared }) => !shared);
  if (held.length > 0) {
    console.log(
      `\nHeld back: ${counted(held.length, "batch", "batches")}. The customer sees the delivery, and no figures.`,
    );
    for (const { run, reasons } of held)
      console.log(`  ${run}: ${reasons.join("; ")}\n      mend it, or say --despite ${run}`);
  }
  const despite = record.inQuestion.filter(({ shared }) => shared);
  for (const { run, reasons } of despite) console.log(`\nShared all the same: ${run}: ${reasons.join("; ")}`);
}

function printChanges({ record: { changes } }: Shared): void {
  const of = (kind: string) => changes.filter((change) => change.kind === kind);
  console.log(
    `\nSince the last share: ${counted(of("added").length, "batch", "batches")} added, ${counted(of("altered").length, "batch", "batches")} altered, ${counted(of("taken-back").length, "batch", "batches")} taken back.`,
  );
  for (const { customer, run, figures } of of("altered")) {
    for (const { name, was, is } of figures) console.log(`  ${customer}, ${run}: ${name} was ${was}, now ${is}`);
  }
  for (const { customer, run } of of("taken-back")) console.log(`  ${customer}, ${run}: no longer shown`);
}

function printShared(shared: Shared): void {
  const { customers, record, lost, newKeys, trial } = shared;
  console.log(`\nPages are in ${values.out}: put all of it on a host, in place of what was there.`);
  for (const { customer, key, batches, sealed, newPassphrase } of customers) {
    const place = record.address === null ? `${values.out}/${key}/index.html` : `${record.address}${key}/`;
    console.log(`\n${customer}: ${counted(batches, "batch", "batches")}${sealed ? ", sealed" : ""}\n  ${place}`);
    if (newPassphrase !== null) {
      const kept = values.passphrases === undefined ? "shown this once" : `kept in ${values.passphrases}`;
      console.log(`  passphrase (${kept}; give it apart from the link): ${newPassphrase}`);
    }
  }
  if (record.address === null) console.log("\nNo --address was given, so the batch sheets carry no QR code.");
  else if (!record.address.startsWith("https:"))
    console.log("\nThe address is not https: sealed pages will not open from it.");
  printQuestions(shared);
  if (lost.length > 0) console.log(`\nRows set aside, which may be missing from pages:\n  ${lost.join("\n  ")}`);
  if (trial)
    console.log(
      "\nThis is the invented house: its keys are for this time only, and nothing was written to its folder.",
    );
  else {
    if (newKeys > 0) console.log(`\n${counted(newKeys, "new key")} written to customers.csv.`);
    printChanges(shared);
  }
}

if (!existsSync(values.logs)) {
  console.error(`There is no folder ${values.logs}: give the folder that holds your CSV logs.`);
  process.exit(2);
}
try {
  const shared = await share({
    logs: values.logs,
    out: values.out,
    address: values.address ?? null,
    newKeys: values["new-key"],
    sealAll: values.seal,
    sealFor: values["seal-for"],
    openFor: values["open-for"],
    passphrases: values.passphrases ?? null,
    despite: values.despite,
    now: Date.now(),
    says: (step) => console.log(step),
  });
  printShared(shared);
} catch (error) {
  if (!(error instanceof RangeError)) throw error;
  console.error(`\nNothing was shared: ${error.message}.`);
  process.exit(2);
}
