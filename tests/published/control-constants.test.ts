import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { c4, d2, d3 } from "../../src/analysis/controlCharts/constants.ts";
import { gaussLegendre } from "../../src/analysis/gaussLegendre.ts";

const [heading, ...rows] = readFileSync(new URL("reference/control-chart-constants.csv", import.meta.url), "utf8")
  .trim()
  .split("\n")
  .map((line) => line.split(",").map((cell) => cell.trim()));
const table = rows.map((row) => Object.fromEntries(row.map((cell, at) => [(heading ?? [])[at], Number(cell)])));

test("c4, d2 and d3 agree with R's integrals of the studentised range for samples of 2 to 25", () => {
  // reference/control-chart-constants.csv: R 4.2.2. Its d2 and d3 come from ptukey, which is good to about 5e-8 at most:
  // at n = 25 it gives 3.93062918 where quadrature to 25 digits gives 3.93062922 (below). c4 is exact there.
  expect(table).toHaveLength(24);
  for (const row of table) {
    const n = row.n as number;
    expect(c4(n)).toLieWithin(row.c4 as number, 1e-12);
    expect(d2(n)).toLieWithin(row.d2 as number, 5e-8);
    expect(d3(n)).toLieWithin(row.d3 as number, 7e-8);
  }
});

test("d2 agrees with closed forms and with quadrature to 25 digits", () => {
  // d2(3) = 3/√π, d2(4) = 6 acos(−1/3)/π^1.5 (Tippett 1925; from memory); 10, 20 and 25 computed with mpmath at 25 digits.
  expect(d2(2)).toAgreeWithin(2 / Math.sqrt(Math.PI), 1e-15);
  expect(d2(3)).toAgreeWithin(3 / Math.sqrt(Math.PI), 1e-14);
  expect(d2(4)).toAgreeWithin((6 * Math.acos(-1 / 3)) / Math.PI ** 1.5, 1e-14);
  expect(d2(10)).toAgreeWithin(3.077505461670346, 1e-14);
  expect(d2(20)).toAgreeWithin(3.734950119596641, 1e-14);
  expect(d2(25)).toAgreeWithin(3.930629219507113, 1e-14);
});

test("d2, D4 and A2 agree with the printed tables to the tables' own rounding", () => {
  // Montgomery, Introduction to Statistical Quality Control, Appendix VI (A2, read in a stored copy) and the table of
  // the handbook's program Dataplot (read). Printed D4 carries the rounding of d3 with it: 0.0015 allows for that.
  const printedA2 = { 2: 1.88, 3: 1.023, 4: 0.729, 5: 0.577, 10: 0.308, 15: 0.223, 20: 0.18, 25: 0.153 };
  for (const [n, a2] of Object.entries(printedA2)) {
    expect(3 / (d2(Number(n)) * Math.sqrt(Number(n)))).toLieWithin(a2, 0.0006);
  }
  expect(1 + (3 * d3(3)) / d2(3)).toLieWithin(2.574, 0.0015);
  expect(1 + (3 * d3(18)) / d2(18)).toLieWithin(1.608, 0.0015);
  expect(d2(2)).toLieWithin(1.128, 5e-4);
  expect(c4(10)).toLieWithin(0.9727, 5e-5);
});

test("gaussLegendre(5) gives the printed abscissas and weights", () => {
  // Abramowitz and Stegun (1964), Table 25.4, n = 5; from memory.
  const { nodes, weights } = gaussLegendre(5);
  expect(nodes[4]).toLieWithin(0.906179845938664, 1e-15);
  expect(nodes[3]).toLieWithin(0.538469310105683, 1e-15);
  expect(weights[4]).toLieWithin(0.236926885056189, 1e-15);
  expect(weights[2]).toLieWithin(0.568888888888889, 1e-15);
});
