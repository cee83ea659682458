import { coverageSentence, guessName, guessSentence } from "../../findings/kilnEvidence.ts";
import type { Coverage, GuessComparison } from "../../report/kilnHoursResult.ts";
import { print } from "../../units/print.ts";
import { Said } from "../Said.tsx";

/** Ways of guessing the next load, ranked by how far each was off on loads it had not seen. */
export function Guesses({
  guesses,
  coverage,
}: {
  readonly guesses: GuessComparison | null;
  readonly coverage: Coverage | null;
}) {
  return (
    <>
      {guesses === null || guesses.guesses.length === 0 ? null : (
        <>
          <table>
            <caption>Which guess is best here</caption>
            <thead>
              <tr>
                <th scope="col">Guess by</th>
                <th scope="col" class="n">
                  off by, r.m.s.
                </th>
                <th scope="col" class="n">
                  on average
                </th>
              </tr>
            </thead>
            <tbody>
              {guesses.guesses.map(({ kind, rootMeanSquareHours, meanAbsoluteHours }) => (
                <tr>
                  <th scope="row">{guesses.winner === kind ? <b>{guessName[kind]}</b> : guessName[kind]}</th>
                  <td class="n">{print(rootMeanSquareHours, "hours", "metric", { decimals: 2 })}</td>
                  <td class="n">{print(meanAbsoluteHours, "hours", "metric", { decimals: 2 })}</td>
                </tr>
              ))}
            </tbody>
          </table>
          <p class="table-note">
            <Said sentence={guessSentence(guesses)} /> R.m.s.: the root of the mean square, in which large misses count
            more.
          </p>
        </>
      )}
      {coverage === null ? null : (
        <p class="table-note">
          <Said sentence={coverageSentence(coverage)} />
        </p>
      )}
    </>
  );
}
