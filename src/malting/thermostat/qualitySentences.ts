import { MINUTE, type TimeSpan } from "./kilnReadings.ts";
import type { ReadingQuality } from "./readingQuality.ts";

const minutes = (spans: readonly TimeSpan[]): number =>
  Math.round(spans.reduce((sum, { from, to }) => sum + (to - from), 0) / MINUTE);

const times = (count: number): string => (count === 1 ? "once" : count === 2 ? "twice" : `${count} times`);

/** What is wrong with a load's readings, a sentence each; empty where nothing is. */
export function qualitySentences(quality: ReadingQuality): readonly string[] {
  const { readings, silent, gaps, frozen, spikes, irregular, usualStepMinutes } = quality;
  const said: string[] = [];
  if (silent > 0) said.push(`${silent} of ${readings} readings have no air-on temperature.`);
  if (gaps.length > 0) said.push(`The logger was silent ${times(gaps.length)}, for ${minutes(gaps)} minutes in all.`);
  if (frozen.length > 0) {
    said.push(`Air on stood still for ${minutes(frozen)} minutes while the kiln did not; that stretch is left out.`);
  }
  if (spikes.length > 0) said.push(`Air on leapt away and back ${times(spikes.length)}; the leap is left out.`);
  if (irregular && usualStepMinutes !== null) {
    said.push(`Readings come at uneven times, usually ${Number(usualStepMinutes.toFixed(1))} minutes apart.`);
  }
  return said;
}
