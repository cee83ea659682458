import { countedInWords, listed } from "../../findings/counted.ts";
import type { Finding, FindingEvidence } from "../../findings/finding.ts";
import { FINDINGS_SHOWN } from "../../findings/review/monthAnswer.ts";
import { namedOf } from "../../findings/review/namedOf.ts";
import type { ReviewReader } from "../../findings/review/reader.ts";
import { findingInWords } from "../../findings/review/reviewFinding.ts";
import type { MonthReview } from "../../report/reviewResult.ts";
import { useBody } from "../context.ts";
import { Entry } from "../Entry.tsx";
import { Fold } from "../Fold.tsx";
import { navigationPage } from "../pageNames.ts";
import { RunLinks } from "../RunLink.tsx";
import { Said } from "../Said.tsx";

/** More batches than this are counted, and only the latest of them named: a dozen numbers tell nothing more. */
function Runs({ runs, runCount }: Pick<FindingEvidence, "runs" | "runCount">) {
  if (runs.length === 0) return null;
  const named = namedOf(runs, runCount);
  return (
    <>
      {`: ${named.words} `}
      <RunLinks runs={named.runs} />
    </>
  );
}

/** Where one thing was seen. The first says no more than its place, since the finding's own sentence said the rest. */
function Seen({ evidence, first }: { readonly evidence: FindingEvidence; readonly first: boolean }) {
  const { hrefTo } = useBody();
  const { path, seen, beside, runs, runCount } = evidence;
  const page = navigationPage(path);
  return (
    <li>
      {path.startsWith("#") ? (
        <a href={path}>Promised against made</a>
      ) : (
        <a href={atAnchor(path, hrefTo)}>{page?.title ?? "The page"}</a>
      )}
      <Runs runs={runs} runCount={runCount} />
      {". "}
      {first ? null : <Said sentence={seen} />}
      {beside.length === 0 ? null : ` Logged about then: ${listed(beside.slice(0, 3))}.`}
    </li>
  );
}

/** A choice goes before the anchor, else it would be taken for a part of it. */
function atAnchor(path: string, hrefTo: (path: string) => string): string {
  const [page = "", anchor] = path.split("#");
  return anchor === undefined ? hrefTo(page) : `${hrefTo(page)}#${anchor}`;
}

function FindingEntry({ finding }: { readonly finding: Finding }) {
  return (
    <li class="finding">
      <h3>
        <Said sentence={finding.what} />
      </h3>
      <p>
        <Said sentence={finding.cost} /> <Said sentence={finding.howSure} />
      </p>
      <ul class="finding-seen">
        {finding.evidence.map((evidence, i) => (
          <Seen evidence={evidence} first={i === 0} />
        ))}
      </ul>
      <p class="finding-check">
        <b>Check first.</b> {finding.checkFirst.join(" ")}
      </p>
    </li>
  );
}

/** What to look at, what it costs, how sure it is, where it was seen and what to check first; the dearest first. */
export function FindingsList({ review, reader }: { readonly review: MonthReview; readonly reader: ReviewReader }) {
  const findings = review.findings.map((finding) => findingInWords(finding, reader));
  if (findings.length === 0) return null;
  const more = findings.slice(FINDINGS_SHOWN);
  const entries = (of: readonly Finding[]) => of.map((finding) => <FindingEntry finding={finding} />);
  return (
    <Entry id="findings" title="To look at" note="In order of what it costs a month and how sure it is.">
      <ol class="findings">{entries(findings.slice(0, FINDINGS_SHOWN))}</ol>
      {more.length === 0 ? null : (
        <p class="print-only">{`${countedInWords(more.length, "more thing")} stand on the page itself.`}</p>
      )}
      {more.length === 0 ? null : (
        <Fold summary={countedInWords(more.length, "more thing")}>
          <ol class="findings">{entries(more)}</ol>
        </Fold>
      )}
    </Entry>
  );
}
