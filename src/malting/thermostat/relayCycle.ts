/** A kiln that warms and cools as one body, switched on and off by a thermostat. */
export interface RelayPlant {
  /** Time constant of warming and cooling, minutes. */
  readonly timeConstantMinutes: number;
  /** Where the air would end if the heater never switched off, °C. */
  readonly heaterOnCelsius: number;
  /** Where it would end if the heater never switched on, °C. */
  readonly heaterOffCelsius: number;
  /** The thermostat switches off at this, °C. */
  readonly switchOffCelsius: number;
  /** And on again at this, °C. */
  readonly switchOnCelsius: number;
  /** How late the air answers a switch, minutes; 0 where it answers at once. */
  readonly deadTimeMinutes?: number;
}

/** One cycle of it, once it repeats itself. */
export interface RelayCycle {
  /** Highest and lowest air: with dead time beyond the switch points. */
  readonly highCelsius: number;
  readonly lowCelsius: number;
  /** Time that the air rises, which is also how long the heater is on. */
  readonly onMinutes: number;
  readonly offMinutes: number;
  readonly periodMinutes: number;
  /** Share of the time with the heater on, 0 to 1. */
  readonly duty: number;
  /** Time mean of the air. */
  readonly meanCelsius: number;
}

/**
 * The cycle of a first-order plant under an on/off thermostat, in closed form: on = τ ln[(Ton − low)/(Ton − high)], off = τ
 * ln[(high − Toff)/(low − Toff)]. Dead time L carries the air on past the switch by (Ton − high)(1 − e^(−L/τ)) and below it
 * by (low − Toff)(1 − e^(−L/τ)). Over a whole cycle the air ends where it began, so its mean is duty × Ton + (1 − duty) × Toff.
 *
 * Use it to see how far a stronger or weaker heater moves the middle of a cycle that the thermostat did not move.
 *
 * Source: the solution of τ dT/dt = T∞ − T between two levels; any text on two-position control.
 *
 * @throws {RangeError} when the switch points do not lie between the two ends, low below high, or a time is not positive
 * @example relayCycle({ timeConstantMinutes: 30, heaterOnCelsius: 120, heaterOffCelsius: 20, switchOffCelsius: 67, switchOnCelsius: 63 }).periodMinutes // 4.85121
 */
export function relayCycle(plant: RelayPlant): RelayCycle {
  const { timeConstantMinutes: tau, heaterOnCelsius, heaterOffCelsius, switchOffCelsius, switchOnCelsius } = plant;
  const dead = plant.deadTimeMinutes ?? 0;
  if (!(tau > 0)) throw new RangeError(`relayCycle requires a positive time constant; got ${tau} min`);
  if (!(dead >= 0 && Number.isFinite(dead)))
    throw new RangeError(`relayCycle requires dead time of 0 or more; got ${dead} min`);
  if (
    !(
      heaterOffCelsius < switchOnCelsius &&
      switchOnCelsius < switchOffCelsius &&
      switchOffCelsius < heaterOnCelsius &&
      Number.isFinite(heaterOnCelsius - heaterOffCelsius)
    )
  ) {
    throw new RangeError(
      `relayCycle requires heater off < switch on < switch off < heater on; got ${heaterOffCelsius}, ${switchOnCelsius}, ${switchOffCelsius}, ${heaterOnCelsius} °C`,
    );
  }
  const carried = -Math.expm1(-dead / tau);
  const highCelsius = switchOffCelsius + (heaterOnCelsius - switchOffCelsius) * carried;
  const lowCelsius = switchOnCelsius - (switchOnCelsius - heaterOffCelsius) * carried;
  const onMinutes = tau * Math.log((heaterOnCelsius - lowCelsius) / (heaterOnCelsius - highCelsius));
  const offMinutes = tau * Math.log((highCelsius - heaterOffCelsius) / (lowCelsius - heaterOffCelsius));
  const periodMinutes = onMinutes + offMinutes;
  const duty = onMinutes / periodMinutes;
  return {
    highCelsius,
    lowCelsius,
    onMinutes,
    offMinutes,
    periodMinutes,
    duty,
    meanCelsius: duty * heaterOnCelsius + (1 - duty) * heaterOffCelsius,
  };
}
