import type { FigureSpec } from "../../figures/figureSpec.ts";
import { doubtSentence, loggerDoubts } from "../../findings/loggerDoubts.ts";
import { faultSentences } from "../../findings/loggerFaults.ts";
import { checkWays, trustSentence } from "../../findings/loggerTrust.ts";
import { probeSentences } from "../../findings/probeSentences.ts";
import { useBody } from "../context.ts";
import { Entry } from "../Entry.tsx";
import { Figure } from "../Figure.tsx";
import { Said } from "../Said.tsx";
import type { KilnPlace } from "./kilnPlace.ts";
import { useReader } from "./useReader.ts";

/** Is it the thermostat, or the logger that reads it? What the checks found, and how to check. */
export function ThermostatOrLogger({ kiln, suffix, note, figure }: KilnPlace & { readonly figure: FigureSpec | null }) {
  const { house } = useBody();
  const reader = useReader();
  const { logger } = kiln;
  const doubts = loggerDoubts(kiln);
  const faults = faultSentences(logger, reader);
  const probes = probeSentences(kiln, reader);
  return (
    <Entry id={`logger${suffix}`} title="Thermostat or logger?" note={note}>
      <div class="prose">
        {doubts.map((doubt) => (
          <p>
            <Said sentence={doubtSentence(doubt, reader)} />
          </p>
        ))}
        <p>
          <Said sentence={trustSentence(logger, reader)} />
        </p>
        {probes.length === 0 ? null : (
          <ul class="lines">
            {probes.map((probe) => (
              <li>
                <Said sentence={probe} />
              </li>
            ))}
          </ul>
        )}
      </div>
      <div class="pair">
        {figure === null ? null : <Figure spec={figure} />}
        <section class="prose keep-together">
          <h3>How to check it</h3>
          <ul class="lines">
            {checkWays(logger.boilingCelsius, house.altitudeMetres, reader.units).map((sentence) => (
              <li>
                <Said sentence={sentence} />
              </li>
            ))}
          </ul>
          <p class="small">
            Write both down in logger-checks.csv, as found. Ice point: NIST, read in secondary copies. Boiling point:
            the standard atmosphere and saturated steam (ASHRAE Fundamentals 2017, ch.&nbsp;1).
          </p>
        </section>
      </div>
      {faults.length === 0 ? null : (
        <section class="prose">
          <h3>Faults of the logger, not of a thermostat</h3>
          <ul class="lines">
            {faults.map((fault) => (
              <li>{fault}</li>
            ))}
          </ul>
        </section>
      )}
    </Entry>
  );
}
