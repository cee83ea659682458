import { driftKindSentence, kindTitle, speaksWords } from "../../findings/driftKind.ts";
import { evidenceSentence } from "../../findings/evidenceSentence.ts";
import { holdVerdict, isAlarmed } from "../../findings/holdVerdict.ts";
import { holdTitle } from "../../findings/thermostatWords.ts";
import type { DriftEvidence, HoldJudgement } from "../../report/thermostatResult.ts";
import { useUnits } from "../context.ts";
import { Entry } from "../Entry.tsx";
import { Fold } from "../Fold.tsx";
import { Said } from "../Said.tsx";
import type { KilnPlace } from "./kilnPlace.ts";

function EvidenceList({ evidence }: { readonly evidence: readonly DriftEvidence[] }) {
  const units = useUnits();
  return (
    <dl class="facts">
      {evidence.map((one) => (
        <div class={`speaks-${one.speaks}`}>
          <dt>{kindTitle[one.kind]}</dt>
          <dd>{speaksWords[one.speaks]}</dd>
          <dd class="why">{evidenceSentence(one, units)}</dd>
        </div>
      ))}
    </dl>
  );
}

/** What kind of change the evidence speaks for, hold by hold; folded where nothing is alarmed, since then nothing needs a kind. */
export function KindOfChange({ kiln, suffix, note }: KilnPlace) {
  const holds = [kiln.drying, kiln.cure].filter(
    (judgement): judgement is HoldJudgement => judgement !== null && judgement.evidence.length > 0,
  );
  if (holds.length === 0) return null;
  const alarmed = holds.filter((judgement) => isAlarmed(holdVerdict(judgement)));
  const others = holds.filter((judgement) => !alarmed.includes(judgement));
  const listOf = (judgement: HoldJudgement) => (
    <section class="prose keep-together">
      <h3>{holdTitle[judgement.hold]}</h3>
      {alarmed.includes(judgement) ? (
        <p>
          <Said sentence={driftKindSentence(judgement.evidence)} />
        </p>
      ) : null}
      <EvidenceList evidence={judgement.evidence} />
    </section>
  );
  return (
    <Entry id={`kind-of-change${suffix}`} title="What kind of change" note={note}>
      {alarmed.length === 0 ? <p>Nothing has changed that would have to be explained.</p> : null}
      {alarmed.length === 0 ? null : <div class="pair">{alarmed.map(listOf)}</div>}
      {others.length === 0 ? null : (
        <Fold summary={`What was looked at${alarmed.length === 0 ? "" : " where nothing is alarmed"}`}>
          <div class="pair">{others.map(listOf)}</div>
        </Fold>
      )}
    </Entry>
  );
}
