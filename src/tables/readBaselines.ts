import type { NamedBaseline } from "./house.ts";
import type { TomlReader } from "./tomlValues.ts";

const SPAN = /^(\d{4}-\d{2}-\d{2})\s+to\s+(\d{4}-\d{2}-\d{2})$/;

const isRunList = (value: unknown): value is readonly string[] =>
  Array.isArray(value) && value.length > 0 && value.every((run) => typeof run === "string");

/**
 * The `[baselines]` of house.toml: by variety, grain or `any`, the runs that set the limits of the control charts, as a
 * list of runs or as the local dates between which they were unloaded.
 */
export function readBaselines(inner: TomlReader): readonly NamedBaseline[] {
  return inner.keys().flatMap((variety): NamedBaseline[] => {
    const value = inner.raw(variety);
    if (isRunList(value)) return [{ variety, runs: value, from: null, to: null }];
    const [, from, to] = (typeof value === "string" && SPAN.exec(value.trim())) || [];
    if (from !== undefined && to !== undefined && from <= to) return [{ variety, runs: null, from, to }];
    inner.refuse(
      variety,
      `The baseline of ${variety} is neither a list of runs nor two dates in order.`,
      'Write a list of runs, ["25-001", "25-002"], or two dates, "2025-01-01 to 2025-06-30".',
    );
    return [];
  });
}
