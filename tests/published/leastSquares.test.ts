import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import type { PredictorColumn } from "../../src/analysis/factorisation.ts";
import { fitLeastSquares } from "../../src/analysis/fitLeastSquares.ts";

/** NIST StRD linear regression sets; sources and meaning of the fields in reference/README.md. */
interface CertifiedSet {
  readonly model: "linear" | "multi" | "noint" | "poly";
  readonly degree: number;
  readonly x: readonly (readonly number[])[];
  readonly y: readonly number[];
  readonly certified: {
    readonly coefficients: readonly { readonly name: string; readonly estimate: number; readonly sd: number }[];
    readonly residualSD: number;
    readonly rSquared: number;
    readonly regression: { readonly F: number | null };
  };
}

function readSet(name: string): CertifiedSet {
  return JSON.parse(readFileSync(new URL(`reference/${name}.json`, import.meta.url), "utf8"));
}

function fitOf({ model, degree, x, y }: CertifiedSet) {
  const powers = model === "poly" ? Array.from({ length: degree }, (_, at) => at + 1) : [1];
  const columns: PredictorColumn[] =
    model === "poly"
      ? powers.map((power) => ({ name: `x${power}`, values: x.map((row) => (row[0] as number) ** power) }))
      : (x[0] as readonly number[]).map((_, at) => ({ name: `x${at + 1}`, values: x.map((row) => row[at] as number) }));
  return fitLeastSquares(columns, y, { intercept: model !== "noint" });
}

// Digits asked for (−log10 of the relative error), from a comparison of QR programs on these sets with a margin below
// the best of them; the certified values themselves carry 15.
const sets = [
  { name: "Norris", coefficientDigits: 11, errorDigits: 11, spreadDigits: 12 },
  { name: "NoInt1", coefficientDigits: 13, errorDigits: 13, spreadDigits: 13 },
  { name: "Longley", coefficientDigits: 10, errorDigits: 10, spreadDigits: 12 },
  { name: "Wampler3", coefficientDigits: 8.5, errorDigits: 8.5, spreadDigits: 12 },
  // A polynomial of degree 10 that programs with a careless rank test refuse to fit.
  { name: "Filip", coefficientDigits: 6.5, errorDigits: 6.5, spreadDigits: 7 },
] as const;

test.each(sets)("fitLeastSquares agrees with NIST StRD $name", ({ name, ...digits }) => {
  const set = readSet(name);
  const fit = fitOf(set);
  set.certified.coefficients.forEach(({ estimate, sd }, term) => {
    expect(fit.terms[term]?.estimate).toAgreeWithin(estimate, 10 ** -digits.coefficientDigits);
    expect(fit.terms[term]?.standardError).toAgreeWithin(sd, 10 ** -digits.errorDigits);
  });
  expect(fit.residualStandardDeviation).toAgreeWithin(set.certified.residualSD, 10 ** -digits.spreadDigits);
  expect(fit.rSquared).toAgreeWithin(set.certified.rSquared, Math.max(1e-13, 10 ** -(digits.spreadDigits + 2)));
  expect(fit.f).toAgreeWithin(set.certified.regression.F as number, 10 ** -(digits.spreadDigits - 1));
});

test("fitLeastSquares recovers the exact quintic of NIST StRD Wampler1", () => {
  const set = readSet("Wampler1");
  const fit = fitOf(set);
  // Certified: every coefficient 1, residual standard deviation 0, R² 1.
  expect(fit.terms).toHaveLength(6);
  for (const { estimate } of fit.terms) expect(estimate).toAgreeWithin(1, 10 ** -8.5);
  expect(fit.residualStandardDeviation).toLieWithin(0, 1e-8);
  expect(fit.rSquared).toAgreeWithin(1, 1e-15);
});
