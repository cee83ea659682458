/** A dozen and more troubles that can be planted in a house that is otherwise in good order. */
export type PlantKind =
  | "slipping belt"
  | "clogging filter"
  | "heater element lost"
  | "thermostat creep"
  | "thermostat step"
  | "worn contacts"
  | "logger step"
  | "mis-set scale"
  | "moisture meter"
  | "over-drying"
  | "uneven lot"
  | "short steep"
  | "failing cooler"
  | "lagging bed"
  | "column not kept";

/** One trouble, from a date of the house's calendar on. */
export interface Plant {
  readonly kind: PlantKind;
  /** In the kind's own unit, signed where either way is possible: see `PLANT_SIZES`. */
  readonly size: number;
  readonly from: string;
}

/** What a plant does to the house on one date; for a sound house each is without effect. */
export interface Planted {
  /** Share of the fan's air that comes through, before the kiln is turned up and after. */
  readonly airShare: number;
  readonly cureAirShare: number;
  readonly heaterShare: number;
  readonly thermostatKelvin: number;
  /** Added to how far above and below its middle the thermostat switches. */
  readonly halfDifferentialKelvin: number;
  /** Reading less truth: the logger's air-on probe. */
  readonly loggerKelvin: number;
  /** What the scale shows, as a share of the truth. */
  readonly scaleShare: number;
  /** Reading less truth, points: the moisture meter by which the kiln is run and the malt is logged. */
  readonly meterPoints: number;
  /** Added to the moisture at which the heat goes off. */
  readonly dryEnoughPoints: number;
  /** Added to the hours under water. */
  readonly wetHours: number;
  readonly roomKelvin: number;
  /** Fraction of kernel length that {@link LAGGING_BED} falls behind. */
  readonly bedBehind: number;
  /** Share of rows in which one column is left blank. */
  readonly blankShare: number;
}

export const LAGGING_BED = "B2";
/** Of whose next lot the uneven one is made: it is malted most, so that six batches of it come within its time. */
export const UNEVEN_VARIETY = "Brunolt";

const SOUND: Planted = {
  airShare: 1,
  cureAirShare: 1,
  heaterShare: 1,
  thermostatKelvin: 0,
  halfDifferentialKelvin: 0,
  loggerKelvin: 0,
  scaleShare: 1,
  meterPoints: 0,
  dryEnoughPoints: 0,
  wetHours: 0,
  roomKelvin: 0,
  bedBehind: 0,
  blankShare: 0,
};

/** A belt that slips runs hot and slips the more, so that of 90 % of the air 39 % are left in the cure, as in the demo house. */
const CURE_POWER = 9;
/** Points of steep-out moisture that an hour under water brings (as in `simulateBatch`). */
const POINTS_A_WET_HOUR = 0.35;
/**
 * The bed gives up some water after the meter's word, and less the drier it is: a word lower by so many points is malt that comes off
 * a point drier (this simulation's own: 0.40 lower came off 0.30 and 0.31 drier).
 */
const WORD_A_POINT_DRIER = 1.32;
const MONTH_DAYS = 30.44;
/** No filter clogs altogether before somebody looks. */
const LEAST_AIR = 0.55;

/** What the plant does on a date; nothing before it begins. The uneven lot is a matter of the grain: see `makeLots`. */
export function plantedOn(plant: Plant | null, date: string): Planted {
  if (plant === null || date < plant.from) return SOUND;
  const { kind, size } = plant;
  const months = (Date.parse(date) - Date.parse(plant.from)) / 86_400_000 / MONTH_DAYS;
  switch (kind) {
    case "slipping belt":
      return { ...SOUND, airShare: 1 - size, cureAirShare: (1 - size) ** CURE_POWER };
    case "clogging filter": {
      const airShare = Math.max(LEAST_AIR, 1 - size * months);
      return { ...SOUND, airShare, cureAirShare: airShare };
    }
    case "heater element lost":
      return { ...SOUND, heaterShare: 1 - size };
    case "thermostat creep":
      return { ...SOUND, thermostatKelvin: size * months };
    case "thermostat step":
      return { ...SOUND, thermostatKelvin: size };
    case "worn contacts":
      return { ...SOUND, halfDifferentialKelvin: size / 2 };
    case "logger step":
      return { ...SOUND, loggerKelvin: size };
    case "mis-set scale":
      return { ...SOUND, scaleShare: 1 + size };
    case "moisture meter":
      return { ...SOUND, meterPoints: size };
    case "over-drying":
      return { ...SOUND, dryEnoughPoints: -size * WORD_A_POINT_DRIER };
    case "short steep":
      return { ...SOUND, wetHours: -size / POINTS_A_WET_HOUR };
    case "failing cooler":
      return { ...SOUND, roomKelvin: size };
    case "lagging bed":
      return { ...SOUND, bedBehind: size };
    case "column not kept":
      return { ...SOUND, blankShare: size };
    case "uneven lot":
      return SOUND;
  }
}
