import { counted, listed } from "../findings/counted.ts";
import { printDate } from "../units/instant.ts";
import { maltMeasure } from "../units/maltMeasure.ts";
import type { UnitSystem } from "../units/unitSystem.ts";
import { type Standing, standingOf } from "./againstSpec.ts";
import { printBoth, printLimitsBoth, printMeasureBoth } from "./bothUnits.ts";
import type { PassedDelivery } from "./projection.ts";
import { SHARED_LAB_MEASURES } from "./projection.ts";
import type { SharedBatch } from "./sharedSite.ts";

/** What stands on a page where nothing was tested. */
export const NOT_TESTED = "not tested";

/** A date without a clock or a zone, as deliveries and certificates have it: `31 Oct 2026`. */
export const printDay = (utcMidnight: number): string => printDate(utcMidnight, "UTC");

/** A capital at the start of a line, but where the sign has its own case: pH. */
const upperFirst = (text: string): string =>
  /^[a-z][A-Z]/.test(text) ? text : `${text.charAt(0).toUpperCase()}${text.slice(1)}`;

/** `Batch K24001`, or what else tells it apart where no bag code was logged. */
export function batchTitle({ run, deliveries }: Pick<SharedBatch, "run" | "deliveries">): string {
  if (run.bagCode !== null) return `Batch ${run.bagCode}`;
  const first = deliveries.at(-1);
  return first === undefined
    ? "A batch without a bag code"
    : `Batch without a bag code, delivered ${printDay(first.shippedOn)}`;
}

/** `Brunolt, barley, crop of 2023`. */
export function grainWords({ variety, grain, cropYear, grower }: SharedBatch["run"]): string {
  const parts = [
    variety,
    grain,
    cropYear === null ? null : `crop of ${cropYear}`,
    grower === null ? null : `grown by ${grower}`,
  ];
  const said = parts.filter((part) => part !== null).join(", ");
  return said === "" ? "Grain not recorded" : said;
}

const PACKAGES: Readonly<Record<string, readonly [one: string, many: string]>> = {
  bag: ["bag", "bags"],
  tote: ["tote", "totes"],
  bulk: ["bulk load", "bulk loads"],
};

/** `24 bags`, `in bulk`; a dash where nothing was logged. */
export function packageWords({
  packageKind,
  packageCount,
}: Pick<PassedDelivery, "packageKind" | "packageCount">): string {
  const [one, many] = PACKAGES[packageKind ?? ""] ?? ["package", "packages"];
  if (packageCount !== null) return counted(packageCount, one, many);
  if (packageKind === null) return "–";
  return packageKind === "bulk" ? "in bulk" : many;
}

export const massWords = (delivery: PassedDelivery, units: UnitSystem): string =>
  printBoth(delivery.massKilograms, "mass", units);

/** One line of the table of figures. */
export interface FigureLine {
  readonly measure: string;
  readonly name: string;
  readonly value: string;
  readonly spec: string;
  readonly standing: Standing | null;
  /** Method and date, or how the house came by it. */
  readonly how: string;
}

/**
 * Moisture and laboratory figures of a batch against its spec: a line for each that was tested or has a spec, the
 * laboratory's once a certificate, newest first.
 *
 * @returns the lines, and the names of what was neither tested nor asked for
 */
export function figureLines(
  { run, certificates, spec }: SharedBatch,
  units: UnitSystem,
  timeZone: string,
): { readonly lines: readonly FigureLine[]; readonly untested: readonly string[] } {
  const lines: FigureLine[] = [];
  const untested: string[] = [];
  const add = (measure: string, value: number | null, how: string): void => {
    const found = maltMeasure(measure);
    const limits = spec[measure];
    lines.push({
      measure,
      name: upperFirst(found.words),
      value: value === null ? NOT_TESTED : printMeasureBoth(found, value, units),
      spec: limits === undefined ? "" : printLimitsBoth(found, limits, units),
      standing: value === null ? null : standingOf(value, limits),
      how,
    });
  };
  const made = run.unloadedAt === null ? "" : `, ${printDate(run.unloadedAt, timeZone)}`;
  add(
    "final_moisture_pct",
    run.finalMoisturePercent,
    run.finalMoisturePercent === null ? "" : `${moistureBasis(run.finalMoistureBasis)}${made}`,
  );
  for (const measure of SHARED_LAB_MEASURES) {
    const tested = certificates.flatMap(({ values, methodSet, testedOn }) => {
      const value = values[measure] ?? null;
      return value === null ? [] : [{ value, how: `${methodSet ?? "method not named"}, ${printDay(testedOn)}` }];
    });
    for (const { value, how } of tested) add(measure, value, how);
    if (tested.length > 0) continue;
    if (spec[measure] === undefined) untested.push(maltMeasure(measure).words);
    else add(measure, null, "");
  }
  return { lines, untested };
}

function moistureBasis(basis: string | null): string {
  if (basis === null) return "measured in the malthouse";
  return basis === "laboratory"
    ? "from the laboratory"
    : basis === "logged"
      ? "measured in the malthouse"
      : `${basis}, malthouse`;
}

/** `all 4 figures of the spec tested and within it`, `1 of 4 figures of the spec tested, and within it`. */
function testedOf(tested: number, asked: number): string {
  if (tested < asked) {
    return `${tested} of ${counted(asked, "figure")} of the spec tested, and within it`;
  }
  return asked === 1
    ? "the one figure of the spec tested and within it"
    : `all ${counted(asked, "figure")} of the spec tested and within it`;
}

export const standingWords: Readonly<Record<Standing, string>> = {
  within: "within",
  below: "below the spec",
  above: "above the spec",
};

/** The head of a batch's page: its moisture, how much of its spec was tested, and whether that lies within. */
export function batchAnswer(batch: SharedBatch, units: UnitSystem): string {
  const { lines } = figureLines(batch, units, "UTC");
  const judged = lines.filter(({ standing }) => standing !== null);
  const outside = judged.filter(({ standing }) => standing !== "within");
  const moisture = batch.run.finalMoisturePercent;
  const said =
    moisture === null
      ? "moisture not tested"
      : `${printMeasureBoth(maltMeasure("final_moisture_pct"), moisture, units)} moisture`;
  // A measure with several certificates is one figure of the spec.
  const asked = new Set(lines.filter(({ spec }) => spec !== "").map(({ measure }) => measure)).size;
  const tested = new Set(judged.map(({ measure }) => measure)).size;
  if (asked === 0) return `${said}; there is no spec to hold it against.`;
  if (tested === 0) return `${said}; nothing that the spec asks for was tested.`;
  if (outside.length === 0) return `${said}; ${testedOf(tested, asked)}.`;
  const names = outside.map(({ name, standing }) => `${name.toLowerCase()} ${standingWords[standing ?? "within"]}`);
  return `${said}; outside the spec: ${listed(names)}.`;
}
