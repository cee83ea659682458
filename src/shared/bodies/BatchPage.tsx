import { Scroll } from "../../bodies/Scroll.tsx";
import { batchStory } from "../../figures/batchStory.ts";
import { batchAnswer, batchTitle, grainWords, massWords, packageWords, printDay } from "../batchWords.ts";
import { printBoth } from "../bothUnits.ts";
import { formerFigure } from "../formerWords.ts";
import type { SharedBatch, SharedHouse } from "../sharedSite.ts";
import { FiguresTable } from "./FiguresTable.tsx";
import { PageFoot } from "./PageFoot.tsx";
import { PageHead } from "./PageHead.tsx";
import { Entry } from "./SharedEntry.tsx";
import { SharedFigure } from "./SharedFigure.tsx";

export interface BatchProps {
  readonly house: SharedHouse;
  readonly batch: SharedBatch;
  /** Whether a passphrase stands before the page. */
  readonly sealed: boolean;
}

/** What the bed was like, where that was logged. */
function bedSentence({ run }: SharedBatch, { units }: SharedHouse): string | null {
  return run.bedMeanCelsius === null
    ? null
    : `Bed on the germination floor: ${printBoth(run.bedMeanCelsius, "temperature", units)} on average.`;
}

/** One batch for whoever bought of it: what it is, its figures against the spec, how it was made, and where it stands. */
export function BatchPage({ house, batch, sealed, document }: BatchProps & { readonly document: Document }) {
  const story = batchStory(batch, house);
  const former = formerFigure(batch, house.units);
  const bed = bedSentence(batch, house);
  return (
    <>
      <PageHead house={house}>
        <a class="needs-screen" href="../index.html">
          All you bought
        </a>
        <a class="needs-screen" href="sheet/index.html">
          Sheet to print
        </a>
      </PageHead>
      <main id="body">
        <header class="answer">
          <p class="kicker" data-stage="none">
            {batchTitle(batch)}
          </p>
          <h1>{`${grainWords(batch.run)}: ${batchAnswer(batch, house.units)}`}</h1>
        </header>
        <Entry id="figures" title="Figures">
          <FiguresTable batch={batch} house={house} />
        </Entry>
        <Entry id="made" title="How it was made">
          {story === null ? <p>No times were recorded.</p> : <SharedFigure spec={story} document={document} />}
          {bed === null ? null : <p class="table-note">{bed}</p>}
        </Entry>
        <Entry id="former-batches" title="Beside your former batches">
          {former === null ? (
            <p>Your first batch of this variety that has figures to compare.</p>
          ) : (
            <SharedFigure spec={former} document={document} />
          )}
        </Entry>
        <Entry id="delivered" title="Delivered to you">
          <Scroll label="Delivered to you">
            <table class="compact">
              <caption class="visually-hidden">Delivered to you</caption>
              <thead>
                <tr>
                  <th scope="col">on</th>
                  <th scope="col" class="n">
                    mass
                  </th>
                  <th scope="col">packed</th>
                </tr>
              </thead>
              <tbody>
                {batch.deliveries.map((delivery) => (
                  <tr>
                    <th scope="row">{printDay(delivery.shippedOn)}</th>
                    <td class="n">{massWords(delivery, house.units)}</td>
                    <td>{packageWords(delivery)}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </Scroll>
        </Entry>
      </main>
      <PageFoot house={house} sealed={sealed} />
    </>
  );
}
