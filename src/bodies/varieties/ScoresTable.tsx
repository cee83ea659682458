import { scoreRange } from "../../findings/varieties/scoreWords.ts";
import type { ScoreNumber, VarietyScore } from "../../report/varietiesResult.ts";
import { maltMeasure } from "../../units/maltMeasure.ts";
import { printNumber } from "../../units/print.ts";
import { NOT_LOGGED } from "../printed.ts";
import { Scroll } from "../Scroll.tsx";
import { VarietyLink } from "./VarietyLink.tsx";

const inTable = (score: ScoreNumber | null): string =>
  score === null ? NOT_LOGGED : `${printNumber(score.estimate, 0)}${scoreRange(score)}`;

/** What a row has besides its numbers: early, or why there is none. */
const standingWords = ({ standing, noInterval }: VarietyScore): string =>
  standing === "none" ? "no score" : standing === "early" ? "early, no interval" : (noInterval ?? "");

function Row({ score, standing }: { readonly score: VarietyScore; readonly standing: boolean }) {
  const { variety, allBatches, batches, lots, onTarget, even, met, metShare, measures } = score;
  const worst = measures[0];
  const share =
    metShare === null
      ? ""
      : ` (${printNumber(100 * metShare.low, 0)} to ${printNumber(100 * metShare.high, 0)}\u00a0%)`;
  return (
    <tr>
      <th scope="row" class="keep">
        <VarietyLink variety={variety} />
      </th>
      <td class="n">{inTable(onTarget)}</td>
      <td class="n">{inTable(even)}</td>
      <td class="n">{batches === 0 ? NOT_LOGGED : `${printNumber(met, 0)} of ${printNumber(batches, 0)}${share}`}</td>
      <td class="keep">{worst === undefined ? NOT_LOGGED : maltMeasure(worst.tolerance.measure).words}</td>
      <td class="n">{printNumber(allBatches, 0)}</td>
      <td class="n">{printNumber(lots, 0)}</td>
      {standing ? <td>{standingWords(score)}</td> : null}
    </tr>
  );
}

/** Every variety with both numbers and what was seen, the lowest first; each name leads to its page. */
export function ScoresTable({ scores }: { readonly scores: readonly VarietyScore[] }) {
  const label = "Varieties, the lowest on target first";
  // Where every score is full the column would stand empty.
  const standing = scores.some((score) => standingWords(score) !== "");
  return (
    <>
      <Scroll label={label}>
        <table class="compact runs-table">
          <caption class="visually-hidden">{label}</caption>
          <thead>
            <tr>
              <th scope="col">variety</th>
              <th scope="col" class="n">
                on target, in 100
              </th>
              <th scope="col" class="n">
                even, in 100
              </th>
              <th scope="col" class="n">
                met all so far
              </th>
              <th scope="col">costs most</th>
              <th scope="col" class="n">
                batches in all
              </th>
              <th scope="col" class="n">
                lots
              </th>
              {standing ? <th scope="col">standing</th> : null}
            </tr>
          </thead>
          <tbody>
            {scores.map((score) => (
              <Row key={score.variety} score={score} standing={standing} />
            ))}
          </tbody>
        </table>
      </Scroll>
      <p class="table-note">
        In brackets 95&nbsp;% intervals. On target: the chance that the next batch meets every tolerance. Even: the same
        chance about the variety’s own centre, so that an even variety with a wrong aim is seen as such. Neither stands
        for the other. Met all so far: of the batches that logged every measure that counts.
      </p>
    </>
  );
}
