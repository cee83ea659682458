import type { UnitSystem } from "../../units/unitSystem.ts";
import { useUnits } from "../context.ts";

const NAMES: Readonly<Record<UnitSystem, string>> = { metric: "metric", us: "US customary" };

/** The one choice that a page of the whole house has. Hidden where scripting is off. */
export function UnitsChoice() {
  const units = useUnits();
  return (
    <div class="choose needs-scripting">
      <details>
        <summary>
          {`The whole house, ${NAMES[units]} units. `}
          <span class="as-link">Choose units</span>
        </summary>
        <form method="get" class="choose-fields" data-form="view">
          <div class="field">
            <label for="choose-units">Units</label>
            <select id="choose-units" name="units" data-control="units" value={units}>
              <option value="metric">{NAMES.metric}</option>
              <option value="us">{NAMES.us}</option>
            </select>
          </div>
        </form>
      </details>
      <p class="progress">
        <output data-slot="progress" />{" "}
        <button type="button" class="button button-quiet" data-action="cancel" hidden>
          Cancel
        </button>
      </p>
    </div>
  );
}
