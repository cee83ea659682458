import type { PlantKind } from "../demo/plant.ts";

/** How a kind of trouble is sized. No source gives what is worth knowing: each reason is common practice unless it says otherwise. */
export interface PlantSizes {
  readonly unit: string;
  /** Small, middle, large: in `unit`, before its factor. */
  readonly sizes: readonly [small: number, middle: number, large: number];
  /** From the unit that is printed to the one that is planted. */
  readonly factor: number;
  /** Planted downwards in every other house. */
  readonly eitherWay: boolean;
  /** Why a maltster would call the middle size worth knowing. */
  readonly why: string;
}

const PERCENT = 0.01;

export const PLANT_SIZES: Readonly<Record<PlantKind, PlantSizes>> = {
  "slipping belt": {
    unit: "% of the air lost in drying",
    sizes: [5, 10, 15],
    factor: PERCENT,
    eitherWay: false,
    why: "an hour or so more a load, and beds that come off damp",
  },
  "clogging filter": {
    unit: "% of the air lost a month",
    sizes: [2, 4, 8],
    factor: PERCENT,
    eitherWay: false,
    why: "a tenth of the air gone in a season's ten weeks; a run counts from a loss of 5 %",
  },
  "heater element lost": {
    unit: "% of the heat lost",
    sizes: [11, 22, 33],
    factor: PERCENT,
    eitherWay: false,
    why: "one, two and three of nine elements",
  },
  "thermostat creep": {
    unit: "K a month",
    sizes: [0.3, 0.5, 1],
    factor: 1,
    eitherWay: true,
    why: "out of a tolerance of 1.5 K within a season; a run counts from 0.5 K",
  },
  "thermostat step": {
    unit: "K",
    sizes: [1, 2, 3],
    factor: 1,
    eitherWay: true,
    why: "outside the house's tolerance of 1.5 K",
  },
  "worn contacts": {
    unit: "K more between on and off",
    sizes: [1, 2, 4],
    factor: 1,
    eitherWay: false,
    why: "half as wide again as the 3.4 K of a sound switch",
  },
  "logger step": {
    unit: "K",
    sizes: [0.5, 1, 2],
    factor: 1,
    eitherWay: true,
    why: "three times what a check by hand is good to; a check three weeks later shows it",
  },
  "mis-set scale": {
    unit: "% of what is weighed",
    sizes: [1, 2, 4],
    factor: PERCENT,
    eitherWay: true,
    why: "twice what trade scales may be off in service, in malt that is paid for; over twice the 0.7 points that yields scatter by",
  },
  "moisture meter": {
    unit: "points off the laboratory",
    sizes: [0.2, 0.4, 0.8],
    factor: 1,
    eitherWay: true,
    why: "half of the tolerance of 0.6 to 0.7 points either side; a run counts once the laboratory has tested it",
  },
  "over-drying": {
    unit: "points drier",
    sizes: [0.2, 0.4, 0.8],
    factor: 1,
    eitherWay: false,
    why: "nearly half a per cent of the malt that is sold, and the heat that drove it off; twice the 0.2 points that batches scatter by",
  },
  "uneven lot": {
    unit: "times a middling poor lot",
    sizes: [0.5, 1, 1.8],
    factor: 1,
    eitherWay: false,
    why: "two fields in one bin: kernels that scatter 2.4 times as far as usual",
  },
  "short steep": {
    unit: "points of steep-out moisture",
    sizes: [0.5, 1, 1.5],
    factor: 1,
    eitherWay: false,
    why: "half of the width that is usually accepted",
  },
  "failing cooler": {
    unit: "K in the room",
    sizes: [1, 2, 3],
    factor: 1,
    eitherWay: false,
    why: "an eighth of the kernel's length more by the fourth day",
  },
  "lagging bed": {
    unit: "% of kernel length",
    sizes: [4, 8, 16],
    factor: PERCENT,
    eitherWay: false,
    why: "a third of a class of the acrospire count, some twice what beds differ by at one temperature; a run counts where that bed lay beside another",
  },
  "column not kept": {
    unit: "% of rows left blank",
    sizes: [40, 70, 100],
    factor: PERCENT,
    eitherWay: false,
    why: "more gaps than values",
  },
};
