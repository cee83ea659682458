import { allRules, ruleChoice } from "../analysis/controlCharts/ruleChoice.ts";
import type { RuleName } from "../analysis/controlCharts/signal.ts";
import type { UnitSystem } from "../units/unitSystem.ts";
import type { AirBasis } from "./airBasis.ts";

/** What a reader has chosen. It stands in the address and nowhere else; the built pages use {@link wholeView}. */
export interface View {
  /** Local dates, `2026-01-31`, both inclusive, of loading. */
  readonly from: string | null;
  readonly to: string | null;
  readonly variety: string | null;
  readonly kiln: string | null;
  /** Runs left out by hand. */
  readonly without: readonly string[];
  /** Null: as the house has it. */
  readonly units: UnitSystem | null;
  readonly air: AirBasis | null;
  /** What raises a signal on the control charts; null: the usual pair. */
  readonly rules: readonly RuleName[] | null;
  /** Varieties each on a chart of their own, rather than together as differences from their centres. */
  readonly apart: boolean;
  readonly whatIf: Readonly<Partial<WhatIfText>>;
  /** The trial that a reader plans on Changes, as typed; null: the plan's own first measure and difference. */
  readonly trial: { readonly measure: string | null; readonly difference: string | null };
  readonly sort: string | null;
  readonly search: string | null;
  /** The kiln load whose cycles the Thermostat page shows close up; null: the latest. */
  readonly firing: string | null;
  /** For `runs/?run=`. */
  readonly run: string | null;
  /** For `varieties/?of=`: the folder of a variety's page, where no such page was built. */
  readonly of: string | null;
  /** The month in review, `2026-10`; null: the latest. A built page for each stands under its own address. */
  readonly month: string | null;
}

/** The what-if fields as typed, in the reader's own units, so that the address says what the reader typed. */
export interface WhatIfText {
  readonly humidity: string;
  readonly temperature: string;
  readonly depth: string;
  readonly load: string;
  readonly setPoint: string;
  readonly start: string;
  readonly finish: string;
}

/** The pair that is on unless a reader chooses others. */
export const usualRules: readonly RuleName[] = ruleChoice().rules;

export const whatIfFields = ["humidity", "temperature", "depth", "load", "setPoint", "start", "finish"] as const;

/** The view of a page as it is built: all of the logs, in the house's own units. */
export const wholeView: View = {
  from: null,
  to: null,
  variety: null,
  kiln: null,
  without: [],
  units: null,
  air: null,
  rules: null,
  apart: false,
  whatIf: {},
  trial: { measure: null, difference: null },
  sort: null,
  search: null,
  firing: null,
  run: null,
  of: null,
  month: null,
};

/** Does this view choose other rows, or another fit, than the built pages show? Only then is the engine needed. */
export function choosesRows(view: View): boolean {
  return (
    view.from !== null ||
    view.to !== null ||
    view.variety !== null ||
    view.kiln !== null ||
    view.without.length > 0 ||
    view.air !== null ||
    view.rules !== null
  );
}

const MONTH = /^\d{4}-(0[1-9]|1[0-2])$/;
const ISO_DATE = /^\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])$/;

function oneOf<T extends string>(text: string | null, choices: readonly T[]): T | null {
  return choices.find((choice) => choice === text) ?? null;
}

/** Rules in their own order; the usual pair and no rule at all are the default. */
function readRules(query: URLSearchParams): readonly RuleName[] | null {
  const asked = allRules.filter((rule) => query.getAll("rules").includes(rule));
  return asked.length === 0 || String(asked) === String(usualRules) ? null : asked;
}

/**
 * Reads a view from an address. What it does not understand is left at its default: an address may be old, cut short or
 * typed by hand, and a page that still answers serves better than a fault.
 */
export function parseView(query: URLSearchParams): View {
  const text = (name: string): string | null => query.get(name)?.trim() || null;
  const date = (name: string): string | null => {
    const found = text(name);
    return found !== null && ISO_DATE.test(found) ? found : null;
  };
  const whatIf: Partial<Record<keyof WhatIfText, string>> = {};
  for (const field of whatIfFields) {
    const found = text(field);
    if (found !== null) whatIf[field] = found;
  }
  return {
    from: date("from"),
    to: date("to"),
    variety: text("variety"),
    kiln: text("kiln"),
    without: [...new Set(query.getAll("without").filter((run) => run !== ""))].sort(),
    units: oneOf<UnitSystem>(text("units"), ["metric", "us"]),
    air: oneOf<AirBasis>(text("air"), ["at_loading", "mean"]),
    rules: readRules(query),
    apart: text("apart") === "yes",
    whatIf,
    trial: { measure: text("measure"), difference: text("difference") },
    sort: text("sort"),
    search: text("search"),
    firing: text("firing"),
    run: text("run"),
    of: text("of"),
    month: MONTH.test(text("month") ?? "") ? text("month") : null,
  };
}

/** The inverse of {@link parseView}: `?variety=…`, or an empty string for the whole view. Same view, same text. */
export function formatView(view: View): string {
  const query = new URLSearchParams();
  const put = (name: string, value: string | null): void => {
    if (value !== null && value.trim() !== "") query.append(name, value.trim());
  };
  put("from", view.from);
  put("to", view.to);
  put("variety", view.variety);
  put("kiln", view.kiln);
  for (const run of view.without) query.append("without", run);
  put("units", view.units);
  put("air", view.air);
  for (const rule of view.rules ?? []) query.append("rules", rule);
  put("apart", view.apart ? "yes" : null);
  for (const field of whatIfFields) put(field, view.whatIf[field] ?? null);
  put("measure", view.trial.measure);
  put("difference", view.trial.difference);
  put("sort", view.sort);
  put("search", view.search);
  put("firing", view.firing);
  put("run", view.run);
  put("of", view.of);
  put("month", view.month);
  const text = query.toString();
  return text === "" ? "" : `?${text}`;
}
