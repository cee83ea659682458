/**
 * How far the sides of a thermostat's cycle bend to one side, for a heater that is on for this share of the time: 1/(1 − d) − 1/d,
 * 0 at a half. A heater that is nearly always on creeps up to the upper switch point, so that the air is over the middle of its
 * swing for most of the time; one that is hardly ever on lets it creep down.
 *
 * For a swing h, small against the span between where the air would end with the heater on and with it off (Ton − Toff), the
 * time mean lies h²/(12 (Ton − Toff)) times this over the middle of the swing: the first term in h of the closed form in
 * `relayCycle`, where Ton − T = (1 − d)(Ton − Toff) and T − Toff = d (Ton − Toff). Dead time moves the middle of the swing
 * itself, by half of (Ton − Toff)(1 − e^(−L/τ)) times 1 − 2d, which is a straight line in duty.
 *
 * @param duty share of the time with the heater on
 * @throws {RangeError} for a duty that is not between 0 and 1
 */
export function cycleLean(duty: number): number {
  if (!(duty > 0 && duty < 1)) throw new RangeError(`cycleLean requires a duty between 0 and 1; got ${duty}`);
  return 1 / (1 - duty) - 1 / duty;
}
