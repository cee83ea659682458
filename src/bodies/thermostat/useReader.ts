import { useMemo } from "preact/hooks";
import type { Reader } from "../../findings/thermostatWords.ts";
import { useBody, useUnits } from "../context.ts";

/** Who reads the page's sentences: units and the house's own time. */
export function useReader(): Reader {
  const { house } = useBody();
  const units = useUnits();
  const { timeZone } = house;
  return useMemo(() => ({ units, timeZone }), [units, timeZone]);
}
