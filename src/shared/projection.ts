import type { LoadRow } from "../report/loadRow.ts";
import type { KilnCurve } from "../report/runPageResult.ts";
import type { RunRow } from "../report/runRow.ts";
import type { CertificateRow, DeliveryRow } from "../report/sharing/sharingSources.ts";
import { nearestTarget, type TargetRow } from "../report/targetRow.ts";
import type { TableName } from "../tables/declarations.ts";
import type { House } from "../tables/house.ts";
import { fileNames, insideName } from "../tables/insideName.ts";
import { declarationOf } from "../tables/tableDeclarations.ts";
import { plainText } from "./plainText.ts";

/**
 * Everything that may pass from the house's logs to a customer's page, by table and column; the only way in. What is not
 * listed does not pass: no grower (but where the house allows it), lot, run, kiln, load, tank, bed, delivery or order by
 * its own name, no laboratory, note, yield, mass made, energy, event, finding or price, and of other customers nothing.
 * Of the customer itself the random key alone passes, so that a page that gets about does not say whose it is.
 */
export const MAY_PASS = {
  customers: ["share", "link_key"],
  deliveries: ["shipped_on", "mass_kg", "package_kind", "package_count", "product"],
  "grain-lots": ["grain", "variety", "crop_year"],
  steeping: ["started_at", "ended_at"],
  germination: ["started_at", "ended_at", "bed_mean_c"],
  kilning: [
    "loaded_at",
    "cure_started_at",
    "heat_off_at",
    "unloaded_at",
    "drying_set_c",
    "cure_set_c",
    "final_moisture_pct",
    "bag_code",
  ],
  "moisture-samples": ["moisture_pct"],
  readings: ["at", "air_on_c", "air_off_c", "bed_c"],
  lab: [
    "tested_on",
    "method_set",
    "moisture_pct",
    "extract_fine_dry_pct",
    "extract_coarse_dry_pct",
    "colour_ebc",
    "diastatic_power_wk",
    "alpha_amylase_du",
    "protein_dry_pct",
    "soluble_total_protein_pct",
    "fan_mg_l",
    "beta_glucan_mg_l",
    "friability_pct",
    "viscosity_mpa_s",
    "ph",
    "don_mg_kg",
  ],
  targets: ["low", "target", "high"],
} as const satisfies Partial<Record<TableName, readonly string[]>>;

/** Passes where house.toml says `show_growers = true`, and only then. */
export const MAY_PASS_WITH_GROWERS = { "grain-lots": ["grower"] } as const;

type Lists = typeof MAY_PASS;
/** A column that may pass, as `table.column`. */
type Passing = { [Name in keyof Lists]: `${Name}.${Lists[Name][number]}` }[keyof Lists];

/** Which listed columns each field of a joined row is made of. A field made of any other does not typecheck. */
const RUN_FIELDS = {
  grain: ["grain-lots.grain"],
  variety: ["grain-lots.variety"],
  cropYear: ["grain-lots.crop_year"],
  steepStartedAt: ["steeping.started_at"],
  steepEndedAt: ["steeping.ended_at"],
  germinationStartedAt: ["germination.started_at"],
  germinationEndedAt: ["germination.ended_at"],
  bedMeanCelsius: ["germination.bed_mean_c"],
  loadedAt: ["kilning.loaded_at"],
  cureStartedAt: ["kilning.cure_started_at"],
  unloadedAt: ["kilning.unloaded_at"],
  kilnHours: ["kilning.loaded_at", "kilning.unloaded_at"],
  dryingHours: ["kilning.loaded_at", "kilning.cure_started_at"],
  finalMoisturePercent: ["kilning.final_moisture_pct", "moisture-samples.moisture_pct", "lab.moisture_pct"],
  finalMoistureBasis: ["kilning.final_moisture_pct", "moisture-samples.moisture_pct", "lab.moisture_pct"],
  bagCode: ["kilning.bag_code"],
} as const satisfies Partial<Record<keyof RunRow, readonly Passing[]>>;

const LOAD_FIELDS = {
  loadedAt: ["kilning.loaded_at"],
  cureStartedAt: ["kilning.cure_started_at"],
  heatOffAt: ["kilning.heat_off_at"],
  unloadedAt: ["kilning.unloaded_at"],
  dryingSetCelsius: ["kilning.drying_set_c"],
  cureSetCelsius: ["kilning.cure_set_c"],
} as const satisfies Partial<Record<keyof LoadRow, readonly Passing[]>>;

const CURVE_FIELDS = {
  at: ["readings.at"],
  airOnCelsius: ["readings.air_on_c"],
  airOffCelsius: ["readings.air_off_c"],
  bedCelsius: ["readings.bed_c"],
} as const satisfies Record<keyof KilnCurve, readonly Passing[]>;

const DELIVERY_FIELDS = {
  shippedOn: ["deliveries.shipped_on"],
  massKilograms: ["deliveries.mass_kg"],
  packageKind: ["deliveries.package_kind"],
  packageCount: ["deliveries.package_count"],
  product: ["deliveries.product"],
} as const satisfies Partial<Record<keyof DeliveryRow, readonly Passing[]>>;

const LIMIT_FIELDS = {
  low: ["targets.low"],
  target: ["targets.target"],
  high: ["targets.high"],
} as const satisfies Partial<Record<keyof TargetRow, readonly Passing[]>>;

/** What a laboratory measures and a customer may see, in the order of a certificate. */
export const SHARED_LAB_MEASURES: readonly string[] = MAY_PASS.lab.filter(
  (column) => column !== "tested_on" && column !== "method_set",
);

/** Measures of a batch that have a spec: its own moisture, and the laboratory's. */
export const SHARED_MEASURES: readonly string[] = ["final_moisture_pct", ...SHARED_LAB_MEASURES];

export type PassedRun = Pick<RunRow, keyof typeof RUN_FIELDS> & { readonly grower: string | null };
export type PassedLoad = Pick<LoadRow, keyof typeof LOAD_FIELDS>;
export type PassedCurve = KilnCurve;
export type PassedDelivery = Pick<DeliveryRow, keyof typeof DELIVERY_FIELDS>;
export type PassedLimits = Pick<TargetRow, keyof typeof LIMIT_FIELDS>;
export type PassedHouse = Pick<House, "name" | "timeZone" | "units"> & Pick<House["shared"], "contact" | "note">;
export interface PassedCertificate {
  readonly testedOn: number;
  readonly methodSet: string | null;
  readonly values: Readonly<Record<string, number | null>>;
}

const passValue = <Value>(value: Value): Value => (typeof value === "string" ? (plainText(value) as Value) : value);

/** A new object with the listed fields and no others. Texts come without what could turn the page around them. */
function pass<Row extends object, Field extends keyof Row & string>(
  row: Row,
  fields: Readonly<Record<Field, unknown>>,
): Pick<Row, Field> {
  const passed = (Object.keys(fields) as Field[]).map((field) => [field, passValue(row[field])]);
  return Object.fromEntries(passed) as Pick<Row, Field>;
}

/** Of house.toml: its name, where and how it says things, whom to ask and what it adds. */
export const passHouse = ({ name, timeZone, units, shared }: House): PassedHouse => ({
  name: passValue(name),
  timeZone,
  units,
  contact: passValue(shared.contact),
  note: passValue(shared.note),
});

export const passRun = (run: RunRow, { shared }: Pick<House, "shared">): PassedRun => ({
  ...pass(run, RUN_FIELDS),
  grower: shared.showGrowers ? passValue(run.grower) : null,
});

export const passLoad = (load: LoadRow): PassedLoad => pass(load, LOAD_FIELDS);
export const passCurve = (curve: KilnCurve): PassedCurve => pass(curve, CURVE_FIELDS);
export const passDelivery = (row: DeliveryRow): PassedDelivery => pass(row, DELIVERY_FIELDS);

export const passCertificate = ({ testedOn, methodSet, values }: CertificateRow): PassedCertificate => ({
  testedOn,
  methodSet: passValue(methodSet),
  values: Object.fromEntries(SHARED_LAB_MEASURES.map((measure) => [measure, values[measure] ?? null])),
});

/** The names under which targets.csv may hold a measure, and what its values then are in the unit kept inside. */
function namesOf(measure: string): readonly { name: string; factor: number; offset: number }[] {
  const column = declarationOf("lab").columns.find((candidate) => insideName(candidate) === measure);
  if (column === undefined) return [{ name: measure, factor: 1, offset: 0 }];
  return fileNames(column).map(({ name, suffix }) => ({
    name,
    factor: suffix?.factor ?? 1,
    offset: suffix?.offset ?? 0,
  }));
}

/** True of a measure, as targets.csv names it, whose spec a customer's page shows. */
export const isSharedMeasure = (written: string): boolean =>
  SHARED_MEASURES.some((measure) => namesOf(measure).some(({ name }) => name === written));

/** The limits that hold for a batch's measure, in the unit kept inside; null where there are none. */
export function passLimits(
  targets: readonly TargetRow[],
  measure: string,
  { variety, grain }: Pick<RunRow, "variety" | "grain">,
): PassedLimits | null {
  for (const { name, factor, offset } of namesOf(measure)) {
    const found = nearestTarget(targets, name, variety, grain);
    if (found === null) continue;
    const { low, target, high } = pass(found, LIMIT_FIELDS);
    const inside = (limit: number | null): number | null => (limit === null ? null : limit * factor + offset);
    return { low: inside(low), target: inside(target), high: inside(high) };
  }
  return null;
}

/** True of a column, by its name inside, that is shown on a customer's page. */
export function mayPass(table: TableName, column: string, { shared }: Pick<House, "shared">): boolean {
  const listed: readonly string[] = (MAY_PASS as Partial<Record<TableName, readonly string[]>>)[table] ?? [];
  const growers: readonly string[] = table === "grain-lots" ? MAY_PASS_WITH_GROWERS["grain-lots"] : [];
  return listed.includes(column) || (shared.showGrowers && growers.includes(column));
}
