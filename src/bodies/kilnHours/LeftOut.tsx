import { unfittedSentence } from "../../findings/kilnEvidence.ts";
import type { UnfittedLoad } from "../../report/kilnHoursResult.ts";
import { useBody, useUnits } from "../context.ts";
import { Entry } from "../Entry.tsx";
import { Fold } from "../Fold.tsx";
import { printed, printedDate } from "../printed.ts";
import { RunLinks } from "../RunLink.tsx";
import { Said } from "../Said.tsx";
import { Scroll } from "../Scroll.tsx";

/** Loads are listed up to here, the latest first; above, they are counted. */
const MOST = 60;

/** The loads that no fit used, and why. */
export function LeftOut({ unfitted }: { readonly unfitted: readonly UnfittedLoad[] }) {
  const { house, view } = useBody();
  const byHand = view.without.length > 0;
  const units = useUnits();
  if (unfitted.length === 0) return null;
  const shown = unfitted.slice(-MOST).reverse();
  const label = "Loads not in the fit";
  return (
    <Entry id="left-out" title="Left out">
      <p>
        <Said sentence={unfittedSentence(unfitted)} />
      </p>
      <Fold summary={label} short={shown.length <= 12}>
        <Scroll label={label}>
          <table class="compact">
            <caption class="visually-hidden">{label}</caption>
            <thead>
              <tr>
                <th scope="col">batch</th>
                <th scope="col">loaded</th>
                <th scope="col" class="n">
                  hours
                </th>
                <th scope="col">why</th>
                {byHand ? <th scope="col">left out by hand</th> : null}
              </tr>
            </thead>
            <tbody>
              {shown.map(({ load, runs, loadedAt, hours, reason }) => (
                <tr key={load}>
                  <th scope="row" class="keep">
                    <RunLinks runs={runs} />
                  </th>
                  <td class="keep">{printedDate(loadedAt, house.timeZone)}</td>
                  <td class="n">{printed(hours, "hours", units)}</td>
                  <td>{reason}</td>
                  {byHand ? (
                    <td>
                      {runs
                        .filter((run) => view.without.includes(run))
                        .map((run) => (
                          <input
                            type="checkbox"
                            data-control="without"
                            value={run}
                            checked
                            aria-label={`${run} is left out; untick to put it back`}
                          />
                        ))}
                    </td>
                  ) : null}
                </tr>
              ))}
            </tbody>
          </table>
        </Scroll>
        {unfitted.length > MOST ? <p class="table-note">{`The latest ${MOST} of ${unfitted.length}.`}</p> : null}
      </Fold>
    </Entry>
  );
}
