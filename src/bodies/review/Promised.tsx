import {
  overdueSentence,
  paceSentence,
  promisedAnswer,
  startNextSentence,
} from "../../findings/review/promisedSentences.ts";
import type { ReviewReader } from "../../findings/review/reader.ts";
import type { PromisedAgainstMade } from "../../report/reviewResult.ts";
import { printDate } from "../../units/instant.ts";
import { print, printNumber } from "../../units/print.ts";
import { shownAs } from "../../units/quantity.ts";
import { Entry } from "../Entry.tsx";
import { Fold } from "../Fold.tsx";
import { Said } from "../Said.tsx";
import { Scroll } from "../Scroll.tsx";

interface PromisedProps {
  readonly promised: PromisedAgainstMade;
  readonly reader: ReviewReader;
}

/** `31 bags or 4 totes`: what the store would fill. */
function packages({ bags, totes }: PromisedAgainstMade["varieties"][number]): string {
  const parts = [
    bags === null || bags === 0 ? null : `${printNumber(bags, 0)} ${bags === 1 ? "bag" : "bags"}`,
    totes === null || totes === 0 ? null : `${printNumber(totes, 0)} ${totes === 1 ? "tote" : "totes"}`,
  ];
  return parts.filter((part) => part !== null).join(" or ");
}

function ByVariety({ promised, reader }: PromisedProps) {
  const { unit } = shownAs("mass", reader.units);
  const mass = (kilograms: number): string => print(kilograms, "mass", reader.units, { bare: true });
  const title = `Owed, in store and coming by variety, ${unit}`;
  return (
    <Scroll label={title}>
      <table class="compact">
        <caption class="visually-hidden">{title}</caption>
        <thead>
          <tr>
            <th scope="col">variety</th>
            <th scope="col" class="n">{`owed, ${unit}`}</th>
            <th scope="col">first due</th>
            <th scope="col" class="n">
              in store
            </th>
            <th scope="col">that fills</th>
            <th scope="col" class="n">
              coming
            </th>
            <th scope="col" class="n">
              short
            </th>
            <th scope="col" class="n">
              loads
            </th>
          </tr>
        </thead>
        <tbody>
          {promised.varieties.map((variety) => (
            <tr>
              <th scope="row">{variety.variety}</th>
              <td class="n">{mass(variety.owedKilograms)}</td>
              <td class="nowrap">{variety.firstDueAt === null ? "–" : printDate(variety.firstDueAt, "UTC")}</td>
              <td class="n">{mass(variety.storeKilograms)}</td>
              <td class="nowrap">{packages(variety) || "–"}</td>
              <td class="n">{mass(variety.comingKilograms)}</td>
              <td class="n">{variety.shortKilograms > 0 ? <b>{mass(variety.shortKilograms)}</b> : "0"}</td>
              <td class="n">{printNumber(variety.loadsNeeded, 0)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </Scroll>
  );
}

function OpenOrders({ promised: { orders }, reader }: PromisedProps) {
  if (orders.length === 0) return null;
  const title = "Open orders";
  return (
    <Fold summary="Order by order">
      <Scroll label={title}>
        <table class="compact">
          <caption class="visually-hidden">{title}</caption>
          <thead>
            <tr>
              <th scope="col">order</th>
              <th scope="col">customer</th>
              <th scope="col">variety</th>
              <th scope="col" class="n">
                ordered
              </th>
              <th scope="col" class="n">
                still owed
              </th>
              <th scope="col">due</th>
            </tr>
          </thead>
          <tbody>
            {orders.map((order) => (
              <tr>
                <th scope="row">{order.order}</th>
                <td>{order.customer}</td>
                <td>{order.variety}</td>
                <td class="n">{print(order.kilograms, "mass", reader.units)}</td>
                <td class="n">{print(order.stillOwedKilograms, "mass", reader.units)}</td>
                <td class="nowrap">
                  {printDate(order.dueAt, "UTC")}
                  {order.overdue ? ", past" : ""}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
    </Fold>
  );
}

/** Is what was promised made, in store or coming; and what to start first? */
export function Promised({ promised, reader }: PromisedProps) {
  const beside = [
    startNextSentence(promised, reader),
    overdueSentence(promised, reader),
    paceSentence(promised, reader),
  ].filter((sentence) => sentence.length > 0);
  return (
    <Entry id="promised" title="Promised against made" note={`As of ${printDate(promised.asOf, reader.timeZone)}.`}>
      <p class="lede-strong">
        <Said sentence={promisedAnswer(promised, reader)} />
      </p>
      {promised.varieties.length === 0 ? null : <ByVariety promised={promised} reader={reader} />}
      {beside.map((sentence) => (
        <p>
          <Said sentence={sentence} />
        </p>
      ))}
      <OpenOrders promised={promised} reader={reader} />
    </Entry>
  );
}
