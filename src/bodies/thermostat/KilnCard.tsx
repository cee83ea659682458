import { cardFoot, kilnCard } from "../../findings/kilnCard.ts";
import { printDateInFull } from "../../units/instant.ts";
import { useBody } from "../context.ts";
import { Said } from "../Said.tsx";
import type { KilnPlace } from "./kilnPlace.ts";
import { useReader } from "./useReader.ts";

/**
 * A card to print and hang by the kiln: what was found, what to check and in which order. Asked for by its own address
 * (`#kiln-card`) it is printed alone, on half a page.
 */
export function KilnCard({ kiln, suffix, lastLoggedAt }: KilnPlace & { readonly lastLoggedAt: number | null }) {
  const { house } = useBody();
  const reader = useReader();
  const card = kilnCard(kiln, house.altitudeMetres, reader);
  if (card === null) return null;
  const id = `kiln-card${suffix}`;
  return (
    <section class="entry kiln-card" id={id} aria-labelledby={`${id}-title`}>
      <div class="entry-margin">
        <h2 id={`${id}-title`}>To hang by the kiln</h2>
        <p class="needs-screen">
          <a href={`#${id}`}>This card alone</a>, then print: half a page.
        </p>
      </div>
      <div class="entry-body card">
        <p class="card-head">
          <b>{`Thermostat of kiln ${kiln.kiln}`}</b>{" "}
          <span>{`${house.name}${lastLoggedAt === null ? "" : `, logs to ${printDateInFull(lastLoggedAt, house.timeZone)}`}`}</span>
        </p>
        {card.found.map((sentence) => (
          <p class="card-found">
            <Said sentence={sentence} />
          </p>
        ))}
        <ol class="card-steps">
          {card.steps.map((sentence) => (
            <li>
              <Said sentence={sentence} />
            </li>
          ))}
        </ol>
        <p class="card-caution">
          Opening a thermostat, heater or switchboard is a licensed electrician’s work, with the supply locked off. The
          over-temperature cut-out stays armed, and nobody leaves the kiln unattended.
        </p>
        <p class="small">{cardFoot(kiln, reader)}</p>
      </div>
    </section>
  );
}
