import type { ForeignHands, MatchProbeState } from "./foreignState.ts";

interface MatchProbesProps {
  readonly probes: readonly MatchProbeState[];
  readonly hands: ForeignHands;
}

/** The probes of a file with a row for each: which air each of them is in. */
export function MatchProbes({ probes, hands }: MatchProbesProps) {
  return (
    <>
      <h4>Probe by probe</h4>
      {probes.map(({ name, stem, choices, unit, units }, i) => (
        <div class="match-fields">
          <div class="field">
            <label for={`match-probe-${i}`}>{`${name} is`}</label>
            <select
              id={`match-probe-${i}`}
              value={stem}
              onChange={({ currentTarget }) => hands.probe(name, currentTarget.value, "")}
            >
              {choices.map(({ key, label }) => (
                <option value={key} selected={key === stem}>
                  {label}
                </option>
              ))}
            </select>
          </div>
          {units.length < 2 ? null : (
            <div class="field">
              <label for={`match-probe-${i}-unit`}>written in</label>
              <select
                id={`match-probe-${i}-unit`}
                value={unit}
                onChange={({ currentTarget }) => hands.probe(name, stem, currentTarget.value)}
              >
                {units.map(({ key, label }) => (
                  <option value={key} selected={key === unit}>
                    {label}
                  </option>
                ))}
              </select>
            </div>
          )}
        </div>
      ))}
    </>
  );
}
