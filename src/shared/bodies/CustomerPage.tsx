import { Scroll } from "../../bodies/Scroll.tsx";
import { counted } from "../../findings/counted.ts";
import { massWords, packageWords, printDay } from "../batchWords.ts";
import { printBoth } from "../bothUnits.ts";
import type { SharedCustomer, SharedDelivery, SharedHouse } from "../sharedSite.ts";
import { PageFoot } from "./PageFoot.tsx";
import { PageHead } from "./PageHead.tsx";
import { Entry } from "./SharedEntry.tsx";

interface CustomerPageProps {
  readonly house: SharedHouse;
  readonly customer: SharedCustomer;
}

function Batch({ delivery }: { readonly delivery: SharedDelivery }) {
  const name = delivery.bagCode ?? "no bag code";
  if (delivery.leads === "page") return <a href={`${delivery.ref}/index.html`}>{name}</a>;
  return <>{name}</>;
}

const STANDING: Readonly<Record<SharedDelivery["leads"], string>> = {
  page: "",
  "held-back": "figures held back by the malthouse: please ask",
  "no-page": "",
};

/** Every bag code once, in the order of the alphabet, with the page it leads to. */
function bagCodes(deliveries: readonly SharedDelivery[]): readonly SharedDelivery[] {
  const byCode = new Map<string, SharedDelivery>();
  for (const delivery of deliveries) {
    if (delivery.bagCode !== null && delivery.leads !== "no-page")
      byCode.set(`${delivery.bagCode}\n${delivery.ref}`, delivery);
  }
  return [...byCode].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, delivery]) => delivery);
}

/** What one customer bought, newest first, and the way from a bag in hand to its batch. */
export function CustomerPage({ house, customer }: CustomerPageProps) {
  const { deliveries } = customer;
  const [newest, oldest] = [deliveries[0], deliveries.at(-1)];
  const mass = deliveries.reduce((sum, { massKilograms }) => sum + massKilograms, 0);
  const days = new Set(deliveries.map(({ shippedOn }) => shippedOn)).size;
  const codes = bagCodes(deliveries);
  const anyHeldBack = deliveries.some(({ leads }) => leads === "held-back");
  return (
    <>
      <PageHead house={house} />
      <main id="body">
        <header class="answer">
          <p class="kicker" data-stage="none">
            What you bought
          </p>
          <h1>
            {newest === undefined
              ? "Nothing has been delivered to you yet."
              : `${printBoth(mass, "mass", house.units)} in ${counted(days, "delivery", "deliveries")}, the last on ${printDay(newest.shippedOn)}.`}
          </h1>
          {oldest === undefined ? null : (
            <p class="lede">{`Since ${printDay(oldest.shippedOn)}, newest first. A bag code leads to its batch: what it was made from, how it was made, and its figures.`}</p>
          )}
        </header>
        {codes.length === 0 ? null : (
          <Entry id="bags" title="A bag in hand" note="The code printed on what you hold.">
            <ul class="bag-codes">
              {codes.map((delivery) => (
                <li>
                  <Batch delivery={delivery} />
                </li>
              ))}
            </ul>
          </Entry>
        )}
        {deliveries.length === 0 ? null : (
          <Entry id="deliveries" title="Deliveries">
            <Scroll label="Deliveries, newest first">
              <table class="compact">
                <caption class="visually-hidden">Deliveries, newest first</caption>
                <thead>
                  <tr>
                    <th scope="col">delivered</th>
                    <th scope="col">batch (bag code)</th>
                    <th scope="col">variety</th>
                    <th scope="col" class="n">
                      mass
                    </th>
                    <th scope="col">packed</th>
                    {anyHeldBack ? <th scope="col">note</th> : null}
                  </tr>
                </thead>
                <tbody>
                  {deliveries.map((delivery) => (
                    <tr>
                      <th scope="row">{printDay(delivery.shippedOn)}</th>
                      <td>
                        <Batch delivery={delivery} />
                      </td>
                      <td>{`${delivery.variety ?? "–"}${delivery.product === "malt" ? "" : `, ${delivery.product}`}`}</td>
                      <td class="n">{massWords(delivery, house.units)}</td>
                      <td>{packageWords(delivery)}</td>
                      {anyHeldBack ? <td>{STANDING[delivery.leads]}</td> : null}
                    </tr>
                  ))}
                </tbody>
              </table>
            </Scroll>
          </Entry>
        )}
      </main>
      <PageFoot house={house} sealed={customer.seal !== null} />
    </>
  );
}
