import { Entry } from "../Entry.tsx";
import { Fold } from "../Fold.tsx";

/** What the page's numbers are made of, for whoever wants to check them; folded for everyone else. */
export function FloorWorkedOut() {
  return (
    <Entry id="worked-out" title="How this was worked out">
      <Fold summary="Mass gain, counting error, degree-hours, and what is not claimed">
        <div class="prose">
          <p>
            <b>Moisture from mass gain.</b> The grain’s dry matter is taken to stay: moisture at steep-out is 100 less
            the dry share of the grain that went in times its mass over the mass that came out. A kilogram of dry matter
            leached in a hundred makes it read about 0.55&nbsp;points low at 44&nbsp;%; water that clings makes it read
            high (both worked out). Drain before weighing.
          </p>
          <p>
            <b>Hours and water.</b> Least squares of steep-out moisture on wet hours and water temperature within
            varieties, so that differences between varieties never pass for hours. The hours that would have met a
            target are read off that line at the variety’s usual water; where they lie outside the hours logged they are
            refused. Uptake slows down as grain fills, so a straight line holds within the hours logged and not beyond.
          </p>
          <p>
            <b>Counting error.</b> Kernels fall into six classes of acrospire length (European laboratory practice, from
            memory); the mean takes each class at its middle, overgrown at 1.125. Its interval is that of counting alone
            (multinomial): another hundred kernels of the same bed would give another mean. Shares have Wilson’s
            interval: 10 of 100 is 5.5 to 17.4&nbsp;%, so a change of two or three points is no change.
          </p>
          <p>
            <b>Beds side by side.</b> Each bed against the others of its own batch, by counting error, with Holm’s
            correction for all beds compared: a bed is named only where so large a difference is unlikely among as many
            even beds.
          </p>
          <p>
            <b>Degree-hours.</b> Where two or more counts were made in ten or more batches, the base below which nothing
            grows is fitted from those counts together with the rate, which may differ by variety and from batch to
            batch; the base’s interval is Fieller’s, which is the profile of the fit. That growth goes by degree-hours
            is common practice. Nothing is said beyond the bed temperatures that the counts cover. With one count a
            batch and a fixed timetable, hours and temperature go together and cannot be told apart; then final length
            against bed temperature is shown, and no more.
          </p>
          <p>
            <b>By the books.</b> Well modified is malt with most acrospires between three quarters and full length and
            up to 15&nbsp;% overgrown (CMBTC malting guide, p.&nbsp;28); steep-out 43 to 45&nbsp;% with more than
            80&nbsp;% chitted (the same, p.&nbsp;27). The house’s own ranges in targets.csv go before these.
          </p>
        </div>
      </Fold>
    </Entry>
  );
}
