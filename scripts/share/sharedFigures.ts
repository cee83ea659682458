import { createHash } from "node:crypto";
import { storyStages } from "../../src/figures/batchStages.ts";
import { batchTitle, figureLines, grainWords, massWords, packageWords, printDay } from "../../src/shared/batchWords.ts";
import type { SharedBatch, SharedHouse } from "../../src/shared/sharedSite.ts";
import { printMoment } from "../../src/units/instant.ts";

/** What a customer was shown of one batch, as name and text: what a later share is held against. */
export type ShownFigures = Readonly<Record<string, string>>;

function curveDigest({ curve }: SharedBatch): string {
  if (curve === null) return "none";
  const hash = createHash("sha256");
  for (const values of [curve.at, curve.airOnCelsius, curve.airOffCelsius, curve.bedCelsius]) {
    hash.update(new Uint8Array(values.buffer, values.byteOffset, values.byteLength));
  }
  return `${curve.at.length} readings, ${hash.digest("hex").slice(0, 12)}`;
}

/** Every figure that a batch's page shows. Where it stands among others is left out: that changes with them. */
export function shownFigures(batch: SharedBatch, house: SharedHouse): ShownFigures {
  const shown = new Map<string, string>([
    ["batch", batchTitle(batch)],
    ["grain", grainWords(batch.run)],
  ]);
  for (const { name, value, spec, how } of figureLines(batch, house.units, house.timeZone).lines) {
    const certificate = shown.has(name) ? `${name} (${how})` : name;
    shown.set(certificate, how === "" ? value : `${value}, ${how}`);
    if (spec !== "") shown.set(`spec of ${name}`, spec);
  }
  for (const { name, from, to } of storyStages(batch.run)) {
    shown.set(name, `${printMoment(from, house.timeZone)} to ${printMoment(to, house.timeZone)}`);
  }
  const { run, load } = batch;
  shown.set("cure begun", run.cureStartedAt === null ? "not recorded" : printMoment(run.cureStartedAt, house.timeZone));
  shown.set("set points, °C", `${load?.dryingSetCelsius ?? "–"} and ${load?.cureSetCelsius ?? "–"}`);
  shown.set("bed, °C", String(run.bedMeanCelsius ?? "not recorded"));
  shown.set("kiln curve", curveDigest(batch));
  const said = batch.deliveries.map(
    (one) => `${printDay(one.shippedOn)} ${massWords(one, house.units)} ${packageWords(one)}`,
  );
  shown.set("deliveries", said.join("; "));
  return Object.fromEntries(shown);
}
