import { Entry } from "../Entry.tsx";
import { Fold } from "../Fold.tsx";

/** What the charts are made of, for whoever wants to check them; folded for everyone else. */
export function ChartsWorkedOut() {
  return (
    <Entry id="worked-out" title="How this was worked out">
      <Fold summary="Limits, rules, constants, and why a false signal happens">
        <div class="prose">
          <p>
            <b>Limits are a decision.</b> They come from a baseline: the batches that the house’s settings name, else
            the first 24 usable ones of each variety. From then on they stand still, so that a house that slides cannot
            take its limits along. A <i>new-baseline</i> line in events.csv starts a new phase with a baseline of its
            own. A batch is left out of a baseline by a logged incident or by hand, never because of its value, and
            stays on the chart.
          </p>
          <p>
            <b>Centre and spread.</b> The centre is the mean of a variety’s baseline. The spread of single batches is
            the average difference from one batch to the next of the same variety, divided by 1.1284 (2/√π;
            NIST/SEMATECH e-Handbook, 6.3.2.2, prints 1.128). Limits lie three spreads either side. Until each variety
            has 20 baseline batches they share one spread, measured within varieties; so differences between varieties
            never widen it. Below 12 baseline batches limits are called provisional.
          </p>
          <p>
            <b>Running mean.</b> Each batch counts one tenth, all before it nine tenths (EWMA, weight 0.10), and signals
            beyond 2.814 of its own standard deviations, which grow from the first batch on (e-Handbook, 6.3.2.4; weight
            and limit by Lucas and Saccucci, 1990, read in a secondary copy). <b>Cumulative sums</b> add up what lies
            more than half a spread off the centre, up and down apart, and signal beyond 4.77 spreads (CUSUM;
            e-Handbook, 6.3.2.3; the pair by Hawkins, 1993, from memory and recomputed). Both begin anew with each
            phase.
          </p>
          <p>
            <b>Runs in a row.</b> Eight on one side, two of three beyond two thirds, four of five beyond one third:
            Statistical Quality Control Handbook (1956); six rising or falling: Nelson (1984); both read in secondary
            copies.
          </p>
          <p>
            <b>Why a false signal happens.</b> Even a house that never changes has batches far from its centre, three
            spreads once in 370 if the limits were known exactly and values are normal. Limits known from few batches
            lie too close or too far, and with them that number; so it is given as a range, from 5 to 95 in 100
            baselines of this size. A signal is a reason to look, not a proof; that something was logged about those
            days does not make it the cause. Sizes of shifts are found by looking for the most, so they come out large.
          </p>
          <p>
            <b>Several samples a batch.</b> Their mean stands on the chart as one value; the spread within the batch has
            a chart of its own (limits three standard deviations of a standard deviation; e-Handbook, 6.3.2.1).
          </p>
          <p>
            <b>Against the spec.</b> Interval of Cpk: Bissell (1990), as the e-Handbook, 6.1.6, gives it. Expected
            outside: the chance that the next batch falls outside, by a normal spread whose mean and width are known
            only from these batches. Allowing for chance: Wilson’s interval.
          </p>
        </div>
      </Fold>
    </Entry>
  );
}
