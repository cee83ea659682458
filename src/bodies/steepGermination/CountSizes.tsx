import { countSizeSentence } from "../../findings/steepGermination/countSizeSentences.ts";
import type { CountSize } from "../../report/steepGerminationResult.ts";
import { print, printNumber } from "../../units/print.ts";
import { Entry } from "../Entry.tsx";
import { Said } from "../Said.tsx";
import { Scroll } from "../Scroll.tsx";

const share = (percent: number): string => print(percent, "percent", "metric", { decimals: 0 });

interface CountTableProps {
  readonly title: string;
  readonly what: string;
  readonly rows: readonly (readonly [string, number])[];
}

function CountTable({ title, what, rows }: CountTableProps) {
  return (
    <Scroll label={title}>
      <table class="compact">
        <caption>{title}</caption>
        <thead>
          <tr>
            <th scope="col">{what}</th>
            <th scope="col" class="n">
              kernels in each count
            </th>
          </tr>
        </thead>
        <tbody>
          {rows.map(([difference, kernels]) => (
            <tr>
              <th scope="row">{difference}</th>
              <td class="n">{printNumber(kernels, 0)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </Scroll>
  );
}

/** How many kernels to count so that a difference shows: between two batches, or a bed and its neighbour. */
export function CountSizes({ size }: { readonly size: CountSize | null }) {
  if (size === null) return null;
  return (
    <Entry id="count-size" title="How many to count">
      <p>
        <Said sentence={countSizeSentence(size)} />
      </p>
      <div class="pair">
        {size.forLength.length === 0 ? null : (
          <CountTable
            title="To see a difference in mean length"
            what="difference, of the kernel"
            rows={size.forLength.map(({ difference, kernels }) => [print(difference, "fraction", "metric"), kernels])}
          />
        )}
        {size.forOvergrown.length === 0 ? null : (
          <CountTable
            title="To see more overgrown kernels"
            what="from, to"
            rows={size.forOvergrown.map(({ fromPercent, toPercent, kernels }) => [
              `${share(fromPercent)} to ${share(toPercent)}`,
              kernels,
            ])}
          />
        )}
      </div>
      <p class="table-note">
        So that four of five such differences show at the usual level of 5&nbsp;%. The kernels must be drawn from all
        over the bed: more of them from one handful tell more of that handful.
      </p>
    </Entry>
  );
}
