import type { ThermostatLoad } from "../../malting/thermostat/thermostatLoad.ts";
import type { LoadRow } from "../../report/loadRow.ts";
import { printDate } from "../../units/instant.ts";
import { useBody } from "../context.ts";
import { Entry } from "../Entry.tsx";
import { Figure } from "../Figure.tsx";
import { Fold } from "../Fold.tsx";
import { thermostatPage } from "../pageNames.ts";
import { RunLinks } from "../RunLink.tsx";
import type { CloseUpFigures } from "./thermostatFigures.ts";

/** Loads offered to choose from, the latest. */
const MOST = 200;

interface CloseUpProps {
  /** Every load with readings, in time order. */
  readonly loads: readonly LoadRow[];
  readonly shown: LoadRow;
  readonly read: ThermostatLoad | null;
  readonly figures: CloseUpFigures;
  readonly hasReadings: boolean;
}

/** The cycles of one load close up: the latest, or the one that the reader chose. */
export function CloseUp({ loads, shown, read, figures, hasReadings }: CloseUpProps) {
  const { house, hrefTo } = useBody();
  const several = new Set(loads.map(({ kiln }) => kiln)).size > 1;
  const nameOf = ({ runs, kiln, loadedAt }: LoadRow): string =>
    `${runs.join(", ")} · ${printDate(loadedAt, house.timeZone)}${several ? ` · kiln ${kiln}` : ""}`;
  const offered = loads.slice(-MOST).toReversed();
  const first = figures.drying ?? figures.cure;
  const second = figures.drying === null ? null : figures.cure;
  // What is said of one hold stands under its figure.
  const ofReadings = (read?.sentences ?? []).filter((said) => !/^(Drying|Cure): /.test(said));
  return (
    <Entry id="close-up" title="Cycles close up">
      <form method="get" action={hrefTo(thermostatPage.path)} class="find needs-scripting" data-form="view">
        <div class="field">
          <label for="choose-load">Load; its readings are fetched when asked for</label>
          <select id="choose-load" name="firing" data-control="firing" value={shown.load}>
            {offered.some(({ load }) => load === shown.load) ? null : (
              <option value={shown.load}>{nameOf(shown)}</option>
            )}
            {offered.map((load) => (
              <option value={load.load} selected={load.load === shown.load}>
                {nameOf(load)}
              </option>
            ))}
          </select>
        </div>
      </form>
      <p>
        <RunLinks runs={shown.runs} />
        {`, loaded ${printDate(shown.loadedAt, house.timeZone)}. `}
        {ofReadings.join(" ")}
      </p>
      {first === null ? (
        <p class="refusal">
          {hasReadings
            ? "No hold was found in the readings of this load, so there are no cycles to show."
            : "The readings of this load are not at hand."}
        </p>
      ) : (
        <Figure spec={first} />
      )}
      {second === null ? null : (
        <Fold summary="The cure of this load">
          <Figure spec={second} />
        </Fold>
      )}
    </Entry>
  );
}
