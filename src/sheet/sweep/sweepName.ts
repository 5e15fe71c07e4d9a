/**
 * What the sheet of a unit's sweep is called, without the ending.
 *
 * @param unit - its name.
 * @example sweepName('Inverter A (red case)') // 'sweep-Inverter_A_red_case_'
 */
export function sweepName(unit: string): string {
  return `sweep-${unit.replaceAll(/[^\p{L}\p{N}_.-]+/gu, '_').slice(0, 100)}`;
}
