import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { lagOneAutocorrelation } from "../../src/analysis/lagOneAutocorrelation.ts";
import { mean, median, quantile, sampleStandardDeviation } from "../../src/analysis/summary.ts";

interface CertifiedSummary {
  readonly y: readonly number[];
  readonly certified: { readonly mean: number; readonly sd: number; readonly lag1: number };
}

function read<Content>(name: string): Content {
  return JSON.parse(readFileSync(new URL(`reference/${name}.json`, import.meta.url), "utf8"));
}

// NIST StRD univariate sets. Digits asked for: all that doubles can carry. NumAcc3's decimals cannot be written exactly
// in binary, so its spread holds 9 digits whatever the program; its mean and lag-1 value are less touched by that.
test.each([
  { name: "Lew", meanDigits: 15, spreadDigits: 14, lagDigits: 13 },
  { name: "Lottery", meanDigits: 14, spreadDigits: 14, lagDigits: 13 },
  { name: "NumAcc1", meanDigits: 15, spreadDigits: 15, lagDigits: 15 },
  { name: "NumAcc3", meanDigits: 15, spreadDigits: 9, lagDigits: 9 },
])("mean, sampleStandardDeviation and lagOneAutocorrelation agree with NIST StRD $name", (row) => {
  const { y, certified } = read<CertifiedSummary>(row.name);
  expect(mean(y)).toAgreeWithin(certified.mean, 10 ** -row.meanDigits);
  expect(sampleStandardDeviation(y)).toAgreeWithin(certified.sd, 10 ** -row.spreadDigits);
  expect(lagOneAutocorrelation(y).estimate).toAgreeWithin(certified.lag1, 10 ** -row.lagDigits);
});

test("median and quantile follow R's type 7 on the Nile flows", () => {
  // R datasets::Nile, 100 yearly flows: median 893.5, interquartile range of type 7 234 (R 4.2.2).
  const { y } = read<{ readonly y: readonly number[] }>("Nile");
  expect(y).toHaveLength(100);
  expect(median(y)).toBe(893.5);
  expect(quantile(y, 0.75) - quantile(y, 0.25)).toBe(234);
  expect(quantile(y, 0)).toBe(Math.min(...y));
  expect(quantile(y, 1)).toBe(Math.max(...y));
});
