import { useUnits } from "../context.ts";

/** The one choice that a page of the whole house has. Hidden where scripting is off. */
export function UnitsChoice() {
  const units = useUnits();
  return (
    <div class="choose needs-scripting">
      <form method="get" class="choose-fields" data-form="view">
        <div class="field">
          <label for="choose-units">Units</label>
          <select id="choose-units" name="units" data-control="units" value={units}>
            <option value="metric">metric</option>
            <option value="us">US customary</option>
          </select>
        </div>
      </form>
      <p class="progress">
        <output data-slot="progress" />{" "}
        <button type="button" class="button button-quiet" data-action="cancel" hidden>
          Cancel
        </button>
      </p>
    </div>
  );
}
