import type { TableName } from "../declarations.ts";

/**
 * Words under which maltsters, millers and the makers of loggers head their columns, by the column of the log format:
 * the trade's own English, *common practice*. Phrases are parted by `|`; all words of one must
 * stand in a heading, and the longer one wins. A phrase that begins with `~` is said of many things and counts only for want of a better one.
 */
export type HeadingWords = Readonly<Record<string, string>>;

const run = "batch | batch no | batch number | batch id | run | run no | piece | piece no | malt batch | ~id | ~no";
const lot = "lot | grain lot | lot no | lot number | barley lot | grain batch";
const kiln = "kiln | kiln no | kiln id | kiln number";
const note = "note | notes | remark | remarks | comment | comments";
const acrospire: HeadingWords = {
  acrospire_none: "acrospire none | acrospire 0 | no growth | ungrown",
  acrospire_to_quarter: "acrospire quarter | acrospire 1 4 | 0 1 4",
  acrospire_to_half: "acrospire half | acrospire 1 2 | 1 4 1 2",
  acrospire_to_three_quarters: "acrospire three quarters | acrospire 3 4 | 1 2 3 4",
  acrospire_to_full: "acrospire full | acrospire 1 | 3 4 1",
  acrospire_over: "acrospire over | overgrown | overshot | hussars | bolters",
};

export const headingWords: Readonly<Record<TableName, HeadingWords>> = {
  "grain-lots": {
    lot,
    grain: "grain | cereal | grain type | crop",
    variety: "variety | cultivar | grain variety | barley variety",
    crop_year: "crop year | harvest | harvest year",
    grower: "grower | farm | farmer | supplier",
    received_on: "received | received on | date received | delivered | delivery date | intake date | ~date",
    mass: "received mass | mass received | weight received | quantity | mass | weight",
    moisture_pct: "moisture | grain moisture | barley moisture",
    protein_dry_pct: "protein | protein dry | crude protein",
    germinative_energy_pct: "germinative energy | germination energy | energy | ge",
    plump_pct: "plump | plumpness | plump kernels | sieve",
    don_mg_kg: "don | deoxynivalenol | vomitoxin",
    note,
  },
  steeping: {
    run,
    lot,
    tank: "tank | steep tank | steep | cistern | steep vessel",
    grain_in: "grain in | grain | barley in | barley | steeped | grain weight | dry weight | charge | grain mass",
    grain_moisture_pct: "grain moisture | barley moisture | initial moisture | starting moisture",
    started_at:
      "steep start | steep started | steep in | steep on | start of steep | wet on | first water | steep | ~start | ~started | ~date | ~begin",
    ended_at:
      "steep end | steep ended | steep out | end of steep | casting | cast | out of steep | ~end | ~ended | ~finish",
    water: "steep water | water | water temp | steep temp | steep temperature | water temperature | liquor",
    wet_hours: "wet hours | wet | hours wet | immersion | immersion hours | hours under water",
    air_rest_hours: "air rest | air rests | air rest hours | dry hours | hours drained | rest",
    steep_out: "steep out weight | steep out mass | wet weight | cast weight | steeped weight",
    steep_out_moisture_pct:
      "steep out moisture | moisture steep out | steep moisture | cast moisture | moisture at steep out",
    chitted_pct: "chit | chitted | chitting",
    note,
  },
  germination: {
    run,
    bed: "bed | bed no | floor | couch | box | germination bed | frame",
    started_at:
      "germination start | germ start | germination started | couched | into bed | floor start | germination in | germ in | bed in | ~start | ~started | ~date",
    ended_at:
      "germination end | germ end | germination ended | floor end | out of bed | germination out | germ out | bed out | ~end | ~ended",
    bed_grain: "bed weight | bed grain | bed mass",
    room: "room | room temp | room temperature | floor temp | germination room",
    bed_mean:
      "bed temp | bed temperature | bed mean | mean bed temp | average bed temp | germ temp | germination temp | grain temp",
    bed_max: "bed max | max bed temp | maximum bed temp | bed maximum",
    turns: "turns | turnings | turned | rakings",
    green_moisture_pct: "green moisture | green malt moisture | moisture green malt",
    ...acrospire,
    note,
  },
  "acrospire-counts": {
    run,
    bed: "bed | floor",
    counted_at: "counted | count time | sampled | ~time | ~date",
    ...acrospire,
  },
  kilning: {
    run,
    kiln,
    load: "load | load no | kiln load",
    loaded_at:
      "kiln in | loaded | kiln loaded | into kiln | kiln start | kiln on | kiln started | kilning start | start of kilning | ~start | ~started | ~date",
    cure_started_at: "cure start | curing start | cure on | ramp | heat up | curing | start of curing",
    heat_off_at: "heat off | kiln off | burner off | heater off",
    unloaded_at:
      "kiln out | unloaded | kiln unloaded | off kiln | stripped | kiln stripped | kiln end | kilning end | end of kilning | ~end | ~ended | ~finish",
    bed_depth: "bed depth | depth | kiln depth | kiln bed | bed height",
    green_load: "green weight | green load | green malt | green malt weight | green mass",
    ambient_rh_pct:
      "ambient humidity | ambient rh | humidity | rh | intake humidity | intake rh | relative humidity | air humidity",
    ambient: "ambient | ambient temp | ambient temperature | intake temp | intake air | air temp",
    outside_rh_pct: "outside humidity | outside rh | outdoor humidity | outdoor rh",
    outside: "outside | outside temp | outside temperature | outdoor temp | outdoor temperature",
    drying_set: "drying set | drying set point | drying setpoint | drying temp | drying temperature | withering temp",
    cure_set: "cure set | curing set point | cure setpoint | curing temp | cure temp | curing temperature",
    fan_set: "fan set | fan setpoint | fan thermostat",
    final_moisture_pct:
      "final moisture | malt moisture | finished moisture | moisture off kiln | moisture | kiln moisture | finished malt moisture",
    malt_out: "malt out | malt weight | malt | kilned weight | malt mass | finished weight | yield weight",
    cleaned_out: "cleaned | clean malt | cleaned weight | cleaned malt | bagged",
    rootlets: "rootlets | rootlet | culms | coombes | combings",
    energy_kwh: "energy | kwh | electricity | power used | gas",
    bag_code: "bag code | bag | best before | product code",
    note,
  },
  "moisture-samples": {
    run,
    place: "place | position | sample | where | location",
    moisture_pct: "moisture | sample moisture",
  },
  readings: {
    kiln,
    at: "time | date | timestamp | date time | datetime | when | logged | recorded | at",
    air_on:
      "air on | air in | inlet | inlet air | inlet temp | inlet temperature | supply | supply air | under bed | below bed | plenum | hot air | kiln temp | kiln temperature | ~temperature | ~temp | ~probe 1 | ~ch 1 | ~channel 1 | ~t 1",
    air_off:
      "air off | air out | outlet | outlet air | outlet temp | exhaust | exhaust air | exhaust temp | above bed | over bed | stack | top | ~probe 2 | ~ch 2 | ~channel 2 | ~t 2",
    bed: "bed | bed temp | bed temperature | in bed | grain | grain temp | malt temp | ~probe 3 | ~ch 3 | ~channel 3 | ~t 3",
    air_off_rh_pct:
      "air off humidity | air off rh | exhaust humidity | exhaust rh | outlet humidity | outlet rh | ~humidity | ~rh",
    heater_on: "heater | heater on | burner | heat | heating | relay",
    fan_on: "fan | fan on | blower",
  },
  weather: {
    at: "time | date | timestamp | date time | datetime | when | observed | at",
    ambient_rh_pct: "humidity | rh | relative humidity | outdoor humidity | outside humidity | ambient humidity",
    ambient:
      "temperature | temp | air temperature | outdoor temperature | outside temperature | dry bulb | ambient | outdoor temp | outside temp | air temp",
  },
  "logger-checks": {
    kiln,
    at: "time | date | checked | when",
    probe: "probe | sensor",
    reference: "reference | true | standard | reference temp",
    reading: "reading | logger | logger reading | shown | indicated",
    note,
  },
  lab: {
    run,
    tested_on: "tested | test date | date tested | analysis date | certificate date | ~date",
    laboratory: "laboratory | lab",
    method_set: "method | methods | method set",
    moisture_pct: "moisture",
    extract_fine_dry_pct: "extract | fine extract | extract fine | extract fine grind | fgdb | extract dry",
    extract_coarse_dry_pct: "coarse extract | extract coarse | extract coarse grind | cgdb",
    colour: "colour | color | wort colour | wort color",
    diastatic_power: "diastatic power | dp",
    alpha_amylase_du: "alpha amylase | alpha | aa | dextrinising units",
    protein_dry_pct: "protein | total protein | protein dry",
    soluble_total_protein_pct: "s t | kolbach | kolbach index | snr | soluble total | soluble total protein",
    fan_mg_l: "fan | free amino nitrogen",
    beta_glucan_mg_l: "beta glucan | glucan | bg",
    friability_pct: "friability | friable",
    viscosity_mpa_s: "viscosity",
    ph: "ph",
    don_mg_kg: "don | deoxynivalenol | vomitoxin",
  },
  orders: {
    order: "order | order no | order number",
    customer: "customer | client | brewery | distillery | bakery | buyer",
    variety: "variety | malt | product | malt type",
    mass: "ordered | quantity | mass | weight | amount",
    due_on: "due | due date | wanted by | delivery date",
    note,
  },
  deliveries: {
    delivery: "delivery | delivery no | delivery note | invoice | docket",
    customer: "customer | client | brewery | distillery | bakery | buyer",
    run,
    shipped_on: "shipped | ship date | date shipped | delivered | dispatch date | ~date",
    mass: "mass | weight | quantity | shipped weight",
    package_kind: "package | packaging | package kind",
    package_count: "packages | bags | package count | number of bags",
    product: "product",
    note,
  },
  customers: {
    customer: "customer | customer id | client",
    name: "name | customer name",
    share: "share | shared",
  },
  events: {
    on: "date | on | when",
    kind: "kind | type | event type",
    scope: "scope | area",
    what: "what | event | description",
    alters: "alters",
  },
  targets: {
    variety: "variety",
    measure: "measure | parameter",
    low: "low | min | minimum",
    target: "target | aim",
    high: "high | max | maximum",
  },
};
