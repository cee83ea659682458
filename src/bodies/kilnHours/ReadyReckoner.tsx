import type { WhatIfInputs } from "../../report/kilnHoursResult.ts";
import type { AnswerWhatIf } from "../../report/whatIfAnswer.ts";
import { print } from "../../units/print.ts";
import { shownAs } from "../../units/quantity.ts";
import { useUnits } from "../context.ts";
import { Entry } from "../Entry.tsx";
import { printed } from "../printed.ts";
import { Scroll } from "../Scroll.tsx";
import { reckoner } from "./reckoner.ts";

/** A table that answers without a computer: hours by humidity and depth. */
export function ReadyReckoner({ usual, answer }: { readonly usual: WhatIfInputs; readonly answer: AnswerWhatIf }) {
  const units = useUnits();
  const table = reckoner(usual, units, answer);
  if (table === null) return null;
  const whole = (celsius: number): string => print(celsius, "temperature", units, { decimals: 0 });
  const held = [
    ...(usual.celsius === null ? [] : [`outside air at ${whole(usual.celsius)}`]),
    ...(usual.dryingSetCelsius === null ? [] : [`drying at ${whole(usual.dryingSetCelsius)}`]),
  ];
  return (
    <Entry
      id="reckoner"
      title="Ready reckoner"
      note="To print and hang by the kiln. A dash stands where the logs have no such load."
      class="keep-together"
    >
      <Scroll label="Hours by humidity and bed depth">
        <table class="reckoner">
          <caption>{["Hours from loading to unloading", ...held].join(", ")}</caption>
          <thead>
            <tr>
              <th scope="col">{`humidity ↓ bed, ${shownAs("bedDepth", units).unit} →`}</th>
              {table.depthsMetres.map((depth) => (
                <th scope="col" class="n">
                  {print(depth, "bedDepth", units, { bare: true, decimals: units === "us" ? 1 : 0 })}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {table.rows.map(({ relativeHumidityPercent, hours }) => (
              <tr>
                <th scope="row">{print(relativeHumidityPercent, "percent", units, { decimals: 0 })}</th>
                {hours.map((value) => (
                  <td class="n">{printed(value, "hours", units, { bare: true })}</td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
      <p class="table-note">
        {`Nine loads in ten fall within ${print(table.giveOrTakeHours, "hours", units)} either side.`}
      </p>
    </Entry>
  );
}
