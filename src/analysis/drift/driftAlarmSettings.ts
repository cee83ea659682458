/** How the two charts of `driftAlarm` are set. Limits are in sigma, as for a spread that is known. */
export interface DriftAlarmSettings {
  /** First loads after the calibration that give the level, and the spread too where nothing else does. */
  readonly baselineLoads: number;
  /** The same where earlier stretches tell the spread. */
  readonly baselineLoadsWithEarlier: number;
  /** Loads of earlier stretches from which on they are taken to tell it. */
  readonly earlierLoads: number;
  /** Weight and limit of the running weighted mean. */
  readonly weight: number;
  readonly limit: number;
  /** Reference of the cumulative sums, and how much is added to it for each sigma that the baseline's mean may be off. */
  readonly reference: number;
  readonly referencePerBaselineError: number;
  /** Decision of the cumulative sums. */
  readonly decision: number;
}

/**
 * Chosen by simulation on 400 houses from seeds of their own (`driftPower` prints its result on others), with offsets that
 * scatter by 0.4 °C and six loads a month: among 40 settings those were kept that gave at most half a false alarm in 100
 * quiet loads, for spreads from the baseline alone or from 8 to 200 earlier loads, and at most one where one load in
 * ten scatters two and a half times as far; of these the ones that raise 90 in 100 creeps of 2 °C a month before they leave a
 * tolerance of 2 °C, the hardest aim, with the shortest baseline. Ten loads are needed where they must tell the spread as well:
 * eight would miss that aim. Six will do where earlier stretches tell it, and catch a creep that begins with
 * the calibration itself far more often.
 */
export const driftAlarmSettings: DriftAlarmSettings = {
  baselineLoads: 10,
  baselineLoadsWithEarlier: 6,
  earlierLoads: 20,
  weight: 0.2,
  limit: 2.4,
  reference: 0.75,
  referencePerBaselineError: 0.5,
  decision: 3.5,
};
