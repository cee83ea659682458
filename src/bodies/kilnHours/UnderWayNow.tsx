import { underWaySentence } from "../../findings/kilnEvidence.ts";
import type { UnderWay } from "../../report/kilnHoursResult.ts";
import { useBody } from "../context.ts";
import { Entry } from "../Entry.tsx";
import { RunLinks } from "../RunLink.tsx";
import { Said } from "../Said.tsx";

/** What is in the kiln now, and when it should come off. */
export function UnderWayNow({ loads }: { readonly loads: readonly UnderWay[] }) {
  const { house } = useBody();
  if (loads.length === 0) return null;
  return (
    <Entry id="under-way" title="In the kiln">
      <ul class="lines">
        {loads.map((load) => (
          <li>
            <RunLinks runs={load.runs} />
            {`, kiln ${load.kiln}. `}
            <Said sentence={underWaySentence(load, house.timeZone)} />
          </li>
        ))}
      </ul>
    </Entry>
  );
}
