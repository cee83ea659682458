import { ACROSPIRE_CLASSES } from "../../figures/steepGermination/acrospireClasses.ts";
import type { AcrospireRun, BedCount } from "../../report/steepGerminationResult.ts";
import { printNumber } from "../../units/print.ts";
import { shownAs } from "../../units/quantity.ts";
import { useUnits } from "../context.ts";
import { Entry } from "../Entry.tsx";
import { printed } from "../printed.ts";
import { Scroll } from "../Scroll.tsx";

type Counted = BedCount & { readonly counts: NonNullable<BedCount["counts"]> };

/** Acrospires at unloading, bed by bed and class by class; nothing where none were counted. */
export function KernelsCounted({ counted }: { readonly counted: AcrospireRun | null }) {
  const units = useUnits();
  const beds = (counted?.beds ?? []).filter((bed): bed is Counted => bed.counts !== null);
  if (beds.length === 0) return null;
  const title = "Kernels by acrospire length";
  return (
    <Entry id="kernels" title="Kernels counted">
      <Scroll label={title}>
        <table class="compact">
          <caption>{title}</caption>
          <thead>
            <tr>
              <th scope="col">bed</th>
              {[
                `mean, ${shownAs("temperature", units).unit}`,
                ...ACROSPIRE_CLASSES.map(({ name }) => name),
                "mean length",
              ].map((name) => (
                <th scope="col" class="n">
                  {name}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {beds.map(({ bed, counts, meanLength, bedMeanCelsius }) => (
              <tr>
                <th scope="row">{bed}</th>
                <td class="n">{printed(bedMeanCelsius, "temperature", units, { bare: true })}</td>
                {ACROSPIRE_CLASSES.map(({ key }) => (
                  <td class="n">{printNumber(counts[key], 0)}</td>
                ))}
                <td class="n">{printed(meanLength, "fraction", units)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
    </Entry>
  );
}
