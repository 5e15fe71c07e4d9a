/**
 * Power that discharges a capacity in 1 / cRate hours.
 *
 * @param capacityWh - > 0.
 * @param cRatePerH - discharges an hour: 0.2 empties it in five hours.
 * @example powerAtCRate(650, 0.2) // 130 W
 */
export function powerAtCRate(capacityWh: number, cRatePerH: number): number {
  return capacityWh * cRatePerH;
}

/**
 * The C-rate that a power comes to.
 *
 * @param capacityWh - > 0.
 * @returns per hour.
 * @throws RangeError where there is no capacity.
 */
export function cRateOfPower(capacityWh: number, powerW: number): number {
  if (!(capacityWh > 0)) throw new RangeError(`a capacity must be positive, not ${capacityWh} Wh`);
  return powerW / capacityWh;
}
