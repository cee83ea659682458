import type { LotRow } from "./readLots.ts";

/** What the grain's own columns are called. */
export const grainNumbers: Readonly<
  Record<string, { readonly words: string; readonly of: (lot: LotRow) => number | null }>
> = {
  germinative_energy_pct: { words: "germinative energy", of: (lot) => lot.germinativeEnergyPercent },
  protein_dry_pct: { words: "grain protein", of: (lot) => lot.proteinDryPercent },
  moisture_pct: { words: "grain moisture", of: (lot) => lot.moisturePercent },
  plump_pct: { words: "plump share", of: (lot) => lot.plumpPercent },
  crop_year: { words: "crop year", of: (lot) => lot.cropYear },
};

/** Fewer other lots than this say nothing of what is usual. */
const FEWEST_OTHERS = 3;

/**
 * What of its grain sets a lot apart from the variety's others: a number clear of all of theirs by more than half of
 * their own range, or a grower that none of them had.
 */
export function grainApart(lot: LotRow, others: readonly LotRow[]): readonly string[] {
  const apart: string[] = [];
  for (const [column, { words, of }] of Object.entries(grainNumbers)) {
    if (column === "crop_year") continue;
    const own = of(lot);
    const rest = others.map(of).filter((value) => value !== null);
    if (own === null || rest.length < FEWEST_OTHERS) continue;
    const [low, high] = [Math.min(...rest), Math.max(...rest)];
    const clear = (high - low) / 2;
    if (own < low - clear) apart.push(`the lowest ${words} of its lots`);
    else if (own > high + clear) apart.push(`the highest ${words} of its lots`);
  }
  const growers = others.map(({ grower }) => grower).filter((grower) => grower !== null);
  if (lot.grower !== null && growers.length >= FEWEST_OTHERS && !growers.includes(lot.grower)) {
    apart.push("a grower of its own");
  }
  return apart;
}
