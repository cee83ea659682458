import { Entry } from "../Entry.tsx";
import { Fold } from "../Fold.tsx";

/** What the page is made of, for whoever wants to check it; folded for everyone else. */
export function ChangesWorkedOut() {
  return (
    <Entry id="worked-out" title="How this was worked out">
      <Fold summary="What is compared, what is adjusted for, and how chance is tried">
        <div class="prose">
          <p>
            <b>What is compared.</b> Batches from the last change, repair or calibration of the same scope up to the
            next, at most a year each way, in the measures that the scope can have touched: a kiln moves hours, moisture
            and energy and no yield of dry matter; a scale moves what is weighed. An incident passes and bounds nothing.
            What begins after the day of the change counts as after; what lay on the germination floor that day counts
            as neither.
          </p>
          <p>
            <b>The whole effect.</b> Least squares with a step at the change, beside the weather as Kiln hours has it,
            bed depth, variety and kiln; a yearly wave for moisture and yield where a year and a half of batches can
            tell it from a step. What the change altered is never adjusted for, nor what follows from it: a shallower
            bed brings less water, so that only the air’s drying power is left to adjust by. Errors are HC3 (MacKinnon
            and White 1985, from memory), or Newey and West’s where neighbours are alike.
          </p>
          <p>
            <b>Beyond the altered column.</b> The same with that column beside it: what the change did besides. Not
            given where the column did not vary otherwise, nor where no effect is told.
          </p>
          <p>
            <b>Other dates.</b> A house whose level wanders by itself shows differences wherever one looks, and no
            interval knows that. So the mean of the first few batches after the change less the mean of the last few
            before it, weather and variety taken out, is held against the same at every date in stretches where nothing
            was logged that could move the measure. A stretch that ends in a repair or calibration is left out, since
            what was mended had begun on a day nobody knows. Where more than one date in ten shows as much, a difference
            is not put down to the change, nor where the first batches after it differ the other way. In simulated
            houses whose level wanders, intervals alone call three quarters of idle changes a difference; with this it
            is three in ten.
          </p>
          <p>
            <b>Verdicts.</b> A difference is told where its interval leaves nothing out; it helped where hours or energy
            fell, yield rose, or a measure came nearer to its target in targets.csv. Without one it moved, for neither
            better nor worse. No difference is said where the interval leaves less than is worth telling: an hour of
            kilning, a tenth of the energy, 0.35 points of final moisture, a point of yield or of steep-out moisture, a
            tenth of the kernel’s length (this project’s choice). Otherwise it cannot be told.
          </p>
        </div>
      </Fold>
    </Entry>
  );
}
