import type { Limit, Nominal } from '../../verdict/measureDocument.ts';
import { marginToLimit } from '../../verdict/rule/marginToLimit.ts';
import type { BenchPoint, BenchUnit, VoltageRange } from '../benchDocument.ts';
import { noOnset, onsetBetween } from './onset.ts';
import { byLoad } from './sweepEnds.ts';

/** The range that the voltage should keep to: the one claimed, else ±10 % of nominal; null where neither is known. */
export function voltageRange(claimed: Limit | null, nominal: Nominal | null): VoltageRange | null {
  if (claimed !== null) return { limit: claimed, from: 'claim' };
  if (nominal === null) return null;
  const { voltageV } = nominal;
  return { limit: { min: 0.9 * voltageV, max: 1.1 * voltageV }, from: 'nominal ±10 %' };
}

/**
 * The load from which the RMS voltage lies outside its range, by its value alone, whatever its doubt; of the captures in
 * which the output was held.
 */
export function rangeExit(
  points: readonly BenchPoint[],
  range: VoltageRange | null,
): BenchUnit['leavesRange'] {
  if (range === null) return { ...noOnset('no range is known: neither claimed nor nominal'), range };
  const loaded = byLoad(points).flatMap(({ point, loadW }) =>
    point.rmsV.value === null || point.lost !== undefined ? [] : [{ loadW, volts: point.rmsV.value }],
  );
  const { limit } = range;
  const at = loaded.findIndex(({ volts }) => marginToLimit(volts, limit) < 0);
  const [before, after] = [loaded[at - 1], loaded[at]];
  if (after === undefined) {
    const last = loaded.at(-1);
    const reason =
      last === undefined
        ? 'no capture of a known load'
        : `the voltage keeps to its range up to ${Math.round(last.loadW)} W`;
    return { ...noOnset(reason), range };
  }
  if (before === undefined) {
    const reason = `outside its range at the lowest load already, ${Math.round(after.loadW)} W`;
    return { ...noOnset(reason), range };
  }
  const threshold = limit.min !== undefined && after.volts < limit.min ? limit.min : limit.max!;
  const shownBy = `${before.volts.toFixed(1)} to ${after.volts.toFixed(1)} V`;
  return {
    ...onsetBetween([before.loadW, before.volts], [after.loadW, after.volts], threshold, shownBy),
    range,
  };
}
