import { counted } from "../findings/counted.ts";
import { sharedPagesAnswer, sharedPagesGrounds } from "../findings/sharedPagesAnswer.ts";
import type { ShareChange } from "../report/sharing/sharedBefore.ts";
import type { SharedPagesResult, SharingCustomer } from "../report/sharing/sharedPagesResult.ts";
import { Answer } from "./Answer.tsx";
import { Entry } from "./Entry.tsx";
import { Fold } from "./Fold.tsx";
import { sharedPagesPage } from "./pageNames.ts";
import { NOT_LOGGED, printedDate } from "./printed.ts";
import { RunLink, RunLinks } from "./RunLink.tsx";
import { Scroll } from "./Scroll.tsx";

/** What the command prints for the owner's house, to be copied. */
const COMMAND = "npm run share -- --logs DIR";

/** UTC midnight of `2026-10-31`. */
const dayOf = (isoDate: string): number => Date.parse(`${isoDate}T00:00:00Z`);

function CustomerRow({
  customer: { customer, shares, batchesSent, lastSentOn, shown },
}: {
  readonly customer: SharingCustomer;
}) {
  return (
    <tr>
      <th scope="row">{customer}</th>
      <td>{shares ? "yes" : "no"}</td>
      <td>
        {shown === null ? NOT_LOGGED : `${printedDate(dayOf(shown.since), "UTC")}${shown.sealed ? ", sealed" : ""}`}
      </td>
      <td class="n">{shown === null ? NOT_LOGGED : String(shown.runs.length)}</td>
      <td class="n">{String(batchesSent)}</td>
      <td>{printedDate(lastSentOn, "UTC")}</td>
      <td>{shown === null ? NOT_LOGGED : <span data-preview={customer}>where served at home</span>}</td>
    </tr>
  );
}

const KIND: Readonly<Record<ShareChange["kind"], string>> = {
  added: "added",
  altered: "altered",
  "taken-back": "no longer shown",
};

function Changes({ changes }: { readonly changes: readonly ShareChange[] }) {
  const added = changes.filter(({ kind }) => kind === "added");
  const customers = [...new Set(added.map(({ customer }) => customer))];
  return (
    <ul class="lines">
      {changes
        .filter(({ kind }) => kind !== "added")
        .map(({ customer, run, kind, figures }) => (
          <li>
            {`${customer}, `}
            <RunLink run={run} />
            {`: ${KIND[kind]}${figures.length === 0 ? "" : `: ${figures.map(({ name, was, is }) => `${name} was ${was}, now ${is}`).join("; ")}`}`}
          </li>
        ))}
      {customers.map((customer) => (
        <li>
          {`${customer}, ${KIND.added}: `}
          <RunLinks runs={added.filter((change) => change.customer === customer).map(({ run }) => run)} />
        </li>
      ))}
    </ul>
  );
}

/** Can I show a customer their history without showing them everybody else's? Who sees what, since when. */
export function SharedPages({ result }: { readonly result: SharedPagesResult }) {
  const { customers, last, passes } = result;
  const seeing = customers.filter(({ shown }) => shown !== null);
  return (
    <>
      <Answer
        page={sharedPagesPage.title}
        stage="none"
        answer={sharedPagesAnswer(result)}
        grounds={[sharedPagesGrounds(result)]}
      />
      <Entry
        id="customers"
        title="Who sees what"
        note="Customers by their short names. Links stand in customers.csv, never here."
      >
        {customers.length === 0 ? (
          <p>There is no customers.csv, or nobody in it.</p>
        ) : (
          <Scroll label="Customers">
            <table class="compact">
              <caption class="visually-hidden">Customers</caption>
              <thead>
                <tr>
                  <th scope="col">customer</th>
                  <th scope="col">share</th>
                  <th scope="col">pages since</th>
                  <th scope="col" class="n">
                    batches shown
                  </th>
                  <th scope="col" class="n">
                    batches sent
                  </th>
                  <th scope="col">last sent</th>
                  <th scope="col">preview</th>
                </tr>
              </thead>
              <tbody>
                {customers.map((customer) => (
                  <CustomerRow customer={customer} />
                ))}
              </tbody>
            </table>
          </Scroll>
        )}
        {seeing.map(({ customer, shown }) => (
          <Fold summary={`${customer} sees ${counted(shown?.runs.length ?? 0, "batch", "batches")}`}>
            <p>
              <RunLinks runs={shown?.runs ?? []} />
            </p>
          </Fold>
        ))}
      </Entry>
      {last === null ? null : (
        <Entry id="last-share" title="At the last share" note={printedDate(dayOf(last.on), "UTC")}>
          {last.changes.length === 0 ? (
            <p>Nothing was otherwise than at the share before.</p>
          ) : (
            <Changes changes={last.changes} />
          )}
        </Entry>
      )}
      {last === null || last.inQuestion.length === 0 ? null : (
        <Entry id="held-back" title="In question" note="Faults in what would be shown, and figures outside the spec.">
          <ul class="lines">
            {last.inQuestion.map(({ run, reasons, shared }) => (
              <li>
                <RunLink run={run} />
                {`, ${shared ? "shared all the same" : "held back"}: ${reasons.join("; ")}`}
              </li>
            ))}
          </ul>
        </Entry>
      )}
      <Entry id="how" title="How to share">
        <p>
          <code>{COMMAND}</code>
          {` writes the pages of every customer with share = yes into dist-shared/, apart from this site: put that folder, and never this one, where customers can reach it.`}
        </p>
        <Fold summary="What may pass to a customer, and nothing else">
          <dl class="facts">
            {passes.map(({ table, columns }) => (
              <div>
                <dt>{table}</dt>
                <dd>{columns.join(", ")}</dd>
              </div>
            ))}
          </dl>
        </Fold>
      </Entry>
    </>
  );
}
