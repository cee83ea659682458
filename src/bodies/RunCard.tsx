import type { CardBox, CardStage, RunCardResult } from "../report/runCard.ts";
import { useBody } from "./context.ts";

/** Moisture of finished malt is sampled in several places of the bed, or it says nothing of how even it is. */
const SAMPLES = ["1", "2", "3", "4"];

function Box({ box: { column, label, unit, choices } }: { readonly box: CardBox }) {
  return (
    <div class="card-box">
      <dt>
        {label}
        {unit === null ? null : <span class="card-unit">{` ${unit}`}</span>}
      </dt>
      <dd>{choices.length === 0 ? null : choices.map((choice) => choice.replaceAll("_", " ")).join(" / ")}</dd>
      <code>{column}</code>
    </div>
  );
}

function Stage({ stage: { title, stage, file, boxes } }: { readonly stage: CardStage }) {
  return (
    <section class="card-stage" data-stage={stage}>
      <h2>
        {title} <code>{file}</code>
      </h2>
      <dl class="card-boxes">
        {boxes.map((box) => (
          <Box box={box} />
        ))}
        {stage === "kiln"
          ? SAMPLES.map((sample) => (
              <Box box={{ column: "place, moisture_pct", label: `sample ${sample}: place,`, unit: "%", choices: [] }} />
            ))
          : null}
        <div class="card-box card-note">
          <dt>note</dt>
          <dd />
          <code>note</code>
        </div>
      </dl>
    </section>
  );
}

/** A sheet to print and to carry through the house with one batch. */
export function RunCard({ result }: { readonly result: RunCardResult }) {
  const { house, hrefTo } = useBody();
  const head: readonly CardBox[] = [
    { column: "run", label: "batch", unit: null, choices: [] },
    { column: "lot", label: "grain lot", unit: null, choices: [] },
    { column: "variety", label: "variety", unit: null, choices: [] },
  ];
  return (
    <>
      <header class="answer needs-screen">
        <p class="kicker" data-stage="none">
          Run card
        </p>
        <h1>One sheet for one batch, to hang where the work is done.</h1>
        <p class="lede">
          Print this page on A4 or Letter: it fills one sheet, in the order of the work. Under each box stands the
          column that its value is typed into. Leave blank what was not measured. A second tank or bed takes a second
          card.
        </p>
        <p>
          No logs yet? Empty ones with a README, to unpack and begin:{" "}
          <a href={hrefTo("new-house.zip")} data-still="" download="new-house.zip">
            in kg, °C and cm
          </a>{" "}
          or{" "}
          <a href={hrefTo("new-house-us.zip")} data-still="" download="new-house-us.zip">
            in lb, °F and inches
          </a>
          .
        </p>
      </header>
      <article class="run-card" id="card">
        <header class="card-head">
          <p class="card-house">{house.name}</p>
          <dl class="card-boxes">
            {head.map((box) => (
              <Box box={box} />
            ))}
          </dl>
        </header>
        {result.stages.map((stage) => (
          <Stage stage={stage} />
        ))}
        <p class="caution">
          Carbon dioxide lies over steeping and growing grain: air tanks and low rooms first, and never go in alone. A
          kiln is not left unattended, and a carbon monoxide alarm hangs where people stand (common practice).
        </p>
      </article>
    </>
  );
}
