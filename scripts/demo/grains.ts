import { addDays } from "./clock.ts";
import type { DryingGrain } from "./dryingBed.ts";
import { type Plant, UNEVEN_VARIETY } from "./plant.ts";
import { randomStream } from "./random.ts";
import { POOR_LOT } from "./truths.ts";

/** Varieties and growers are made up; none is meant to be like any that exist. */
export interface Variety {
  readonly name: string;
  readonly grain: DryingGrain;
  /** How often this house makes it, as a weight. */
  readonly weight: number;
  readonly proteinDryPercent: number;
  /** Drying speed of its kernels, 1 for the usual. */
  readonly kernelSpeed: number;
  /** Kilograms of green malt in a cubic metre of bed. */
  readonly greenDensity: number;
  /** Steep-out moisture that the usual steep gives it. */
  readonly steepOutPercent: number;
  /** Acrospire growth, fraction of kernel length for each degree-hour above 2 °C. */
  readonly growth: number;
  readonly rootletsShare: number;
  readonly dryingSetCelsius: number;
  readonly cureSetCelsius: number;
  readonly extractDryPercent: number;
  readonly colourEbc: number;
  readonly kernelSpread: number;
}

export const VARIETIES: readonly Variety[] = [
  {
    name: "Brunolt",
    grain: "barley",
    weight: 0.34,
    proteinDryPercent: 11.2,
    kernelSpeed: 1,
    greenDensity: 470,
    steepOutPercent: 44.4,
    growth: 0.00067,
    rootletsShare: 0.036,
    dryingSetCelsius: 48,
    cureSetCelsius: 81,
    extractDryPercent: 81.2,
    colourEbc: 3.6,
    kernelSpread: 0.13,
  },
  {
    name: "Sivrane",
    grain: "barley",
    weight: 0.26,
    proteinDryPercent: 10.6,
    kernelSpeed: 1.015,
    greenDensity: 476,
    steepOutPercent: 44.1,
    growth: 0.00069,
    rootletsShare: 0.034,
    dryingSetCelsius: 48,
    cureSetCelsius: 81,
    extractDryPercent: 81.9,
    colourEbc: 3.4,
    kernelSpread: 0.13,
  },
  {
    name: "Kestrop",
    grain: "wheat",
    weight: 0.25,
    proteinDryPercent: 12.3,
    kernelSpeed: 1,
    greenDensity: 492,
    steepOutPercent: 42.9,
    growth: 0.00066,
    rootletsShare: 0.03,
    dryingSetCelsius: 48,
    cureSetCelsius: 80,
    extractDryPercent: 84.1,
    colourEbc: 3.5,
    kernelSpread: 0.12,
  },
  {
    name: "Oldruva",
    grain: "wheat",
    weight: 0.15,
    proteinDryPercent: 13.1,
    kernelSpeed: 0.99,
    greenDensity: 497,
    steepOutPercent: 42.6,
    growth: 0.00064,
    rootletsShare: 0.031,
    dryingSetCelsius: 48,
    cureSetCelsius: 80,
    extractDryPercent: 83.3,
    colourEbc: 3.9,
    kernelSpread: 0.13,
  },
];

const GROWERS: Readonly<Record<string, readonly string[]>> = {
  Brunolt: ["Orvelund farm", "Quistrel farm"],
  Sivrane: ["Haverdun farm", "Tamrask farm"],
  Kestrop: ["Quistrel farm"],
  Oldruva: ["Nordrevel farm"],
};

/** One delivery of grain. */
export interface GrainLot {
  readonly lot: string;
  readonly variety: Variety;
  readonly cropYear: number;
  readonly grower: string;
  readonly receivedOn: string;
  readonly massKilograms: number;
  readonly moisturePercent: number;
  readonly proteinDryPercent: number;
  readonly germinativeEnergyPercent: number;
  readonly plumpPercent: number;
  readonly donMgKg: number | null;
  /** How this lot takes up water, points of steep-out moisture beside its variety's. */
  readonly uptake: number;
  /** Beside its variety's: drying speed as a share, dry matter lost as a share of the grain's. */
  readonly kernelSpeed: number;
  readonly lossShare: number;
  /** 1 for an even lot; more where kernels behave unlike each other. */
  readonly unevenness: number;
  readonly note: string;
}

/**
 * Lots of every variety, oldest first: three a crop year, received after harvest, in midwinter and in spring. The house
 * works each until the next comes.
 *
 * @param quiet a house whose lots are all sound, but for the one that is planted
 */
export function makeLots(
  seed: number,
  fromDate: string,
  toDate: string,
  quiet?: { readonly plant: Plant | null },
): readonly GrainLot[] {
  const lots: GrainLot[] = [];
  let unplanted = quiet?.plant?.kind === "uneven lot" ? quiet.plant : null;
  const firstYear = Number(fromDate.slice(0, 4)) - 1;
  const lastYear = Number(toDate.slice(0, 4));
  for (let year = firstYear; year <= lastYear; year++) {
    const season = randomStream(seed, "crop-year", year);
    const yearProtein = 0.5 * season.normal();
    let number = 0;
    for (const [v, variety] of VARIETIES.entries()) {
      for (const [part, received] of [`${year}-09-02`, `${year}-12-29`, `${year + 1}-04-06`].entries()) {
        number++;
        const r = randomStream(seed, "lot", year * 100 + v * 10 + part);
        const lot = `L${String(year % 100).padStart(2, "0")}-${String(number).padStart(2, "0")}`;
        const receivedOn = addDays(received, r.integer(-6, 6) + v);
        const isPlanted = unplanted !== null && variety.name === UNEVEN_VARIETY && receivedOn >= unplanted.from;
        // 1 for the demo house's one poor lot.
        let poor = 0;
        if (quiet === undefined) poor = lot === POOR_LOT.lot && variety.name === POOR_LOT.variety ? 1 : 0;
        else if (isPlanted && unplanted !== null) poor = unplanted.size;
        if (isPlanted) unplanted = null;
        const growers = GROWERS[variety.name] ?? [];
        lots.push({
          lot,
          variety,
          cropYear: year,
          grower: r.pick(growers),
          receivedOn,
          massKilograms: 50 * Math.round((2600 + 3400 * variety.weight * 2 + 200 * r.normal()) / 50),
          moisturePercent: 12.3 + 0.5 * r.normal() - 0.4 * part + 0.3 * season.normal(),
          proteinDryPercent: variety.proteinDryPercent + yearProtein + 0.3 * r.normal(),
          germinativeEnergyPercent: poor > 0 ? 90 + 7.6 * (1 - poor) : Math.min(99.5, 97.6 + 0.7 * r.normal()),
          plumpPercent: poor > 0 ? 74 + 18 * (1 - poor) : Math.min(98, 92 + 2 * r.normal()),
          donMgKg: r.chance(0.7) ? Math.max(0.05, 0.18 + 0.12 * r.normal()) : null,
          uptake: 0.4 * poor + 0.28 * r.normal(),
          kernelSpeed: 1 + 0.008 * r.normal(),
          lossShare: 0.008 * poor + 0.0035 * r.normal(),
          unevenness: 1 + 1.4 * poor,
          note: quiet === undefined && poor > 0 ? "two fields mixed at harvest, says the grower" : "",
        });
      }
    }
  }
  return lots
    .filter((l) => l.receivedOn < toDate && (quiet !== undefined || l.lot !== POOR_LOT.neverCame))
    .sort((a, b) => (a.receivedOn < b.receivedOn ? -1 : a.receivedOn > b.receivedOn ? 1 : a.lot < b.lot ? -1 : 1));
}

/** The lot of this variety that the house is working on a date: the newest received a week or more ago. */
export function lotInUse(lots: readonly GrainLot[], variety: Variety, date: string): GrainLot {
  const before = addDays(date, -7);
  const ready = lots.filter((l) => l.variety === variety && l.receivedOn <= before);
  const found = ready[ready.length - 1] ?? lots.find((l) => l.variety === variety);
  if (!found) throw new Error(`no lot of ${variety.name} by ${date}`);
  return found;
}
