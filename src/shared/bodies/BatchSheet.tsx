import { storyStages } from "../../figures/batchStages.ts";
import { batchAnswer, batchTitle, grainWords, massWords, packageWords, printDay } from "../batchWords.ts";
import { qrPath } from "../qrPath.ts";
import type { BatchProps } from "./BatchPage.tsx";
import { FiguresTable } from "./FiguresTable.tsx";
import { PageFoot } from "./PageFoot.tsx";
import { PageHead } from "./PageHead.tsx";

function Code({ address, sealed }: { readonly address: string; readonly sealed: boolean }) {
  const { size, path } = qrPath(address);
  return (
    <figure class="qr">
      <svg viewBox={`0 0 ${size} ${size}`} role="img" aria-label="QR code with the address of this batch’s page">
        <path class="qr-dark" d={path} />
      </svg>
      <figcaption>
        {sealed
          ? "Opens this batch’s page, which asks for your passphrase."
          : "Opens this batch’s page. Whoever scans it can read that page."}
      </figcaption>
    </figure>
  );
}

/** Deliveries that fit on the sheet; the batch's page has them all. */
const MOST_DELIVERIES = 6;

/** One batch on one printed page, to go with the delivery. */
export function BatchSheet({ house, batch, sealed, address }: BatchProps & { readonly address: string | null }) {
  const stages = storyStages(batch.run);
  const more = batch.deliveries.length - MOST_DELIVERIES;
  return (
    <>
      <PageHead house={house}>
        <a class="needs-screen" href="../index.html">
          This batch’s page
        </a>
      </PageHead>
      <main id="body" class="sheet">
        <div class="sheet-head">
          <header class="answer">
            <p class="kicker" data-stage="none">
              Batch sheet
            </p>
            <h1>{batchTitle(batch)}</h1>
            <p class="lede">{`${grainWords(batch.run)}: ${batchAnswer(batch, house.units)}`}</p>
          </header>
          {address === null ? (
            <p class="qr-missing">No QR code: the malthouse gave no address for these pages when they were made.</p>
          ) : (
            <Code address={address} sealed={sealed} />
          )}
        </div>
        <h2>Figures</h2>
        <FiguresTable batch={batch} house={house} newestOnly />
        <h2>Made and delivered</h2>
        <ul class="lines">
          <li>
            {stages.length === 0
              ? "No times were recorded."
              : stages.map(({ name, said }) => `${name} ${said}`).join(", ")}
          </li>
          {batch.deliveries.slice(0, MOST_DELIVERIES).map((delivery) => (
            <li>{`${printDay(delivery.shippedOn)}: ${massWords(delivery, house.units)}, ${packageWords(delivery)}`}</li>
          ))}
          {more > 0 ? <li>{`and ${more} earlier`}</li> : null}
        </ul>
      </main>
      <PageFoot house={house} sealed={sealed} />
    </>
  );
}
