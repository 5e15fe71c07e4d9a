import { withoutBudget } from '../../assay/channelFigures.ts';
import type { Figure } from '../../base/figure.ts';
import { budgeted } from '../../measure/doubt/budget.ts';
import { scatter } from '../../measure/doubt/component.ts';
import type { BenchPoint, Regulation } from '../benchDocument.ts';
import { type BenchReason, lacking } from '../reasons.ts';

/**
 * Voltage regulation from no load to full load: 100 · (V0 − Vfull) / Vfull, over the full-load voltage as the
 * trade has it.
 *
 * @returns positive where the voltage falls with load. A gain common to both captures cancels in the ratio, so
 * that noise and resolution alone make the uncertainty; where they are not known apart, the whole uncertainty
 * of both voltages does.
 * @example 120 V without load and 117 V at full load: 100 · 3 / 117 = 2.56 %
 */
export function regulation(points: readonly BenchPoint[]): Regulation {
  const ends = sweepEnds(points);
  if ('reason' in ends)
    return {
      regulationPercent: { value: null, reason: ends.reason },
      noLoadW: null,
      fullLoadW: null,
    };
  const { noLoad, fullLoad } = ends;
  return {
    regulationPercent: regulationPercent(noLoad, fullLoad),
    noLoadW: noLoad.loadW,
    fullLoadW: fullLoad.loadW,
  };
}

function regulationPercent({ point: first }: LoadedPoint, { point: last }: LoadedPoint): Figure {
  if (first.rmsV.value === null) return first.rmsV;
  if (last.rmsV.value === null) return last.rmsV;
  const [noLoad, fullLoad] = [first.rmsV.value, last.rmsV.value];
  if (fullLoad === 0) return lacking({ code: 'voltage.noneAtFullLoad' });
  // Half-widths of 95.45 % are two standard uncertainties.
  const u = ({ rmsScatterV, rmsV }: BenchPoint): number =>
    (rmsScatterV ?? (rmsV.value === null ? 0 : rmsV.uncertainty)) / 2;
  return withoutBudget(
    budgeted(100 * (noLoad / fullLoad - 1), [
      scatter('no-load voltage', u(first), 'V', 100 / fullLoad),
      scatter('full-load voltage', u(last), 'V', (100 * noLoad) / fullLoad ** 2),
    ]),
  );
}

/** A capture whose load is known, in W. */
interface LoadedPoint {
  readonly point: BenchPoint;
  readonly loadW: number;
}

/** The captures of known load, by rising load. */
export function byLoad(points: readonly BenchPoint[]): readonly LoadedPoint[] {
  return points
    .flatMap((point) => (point.loadW.value === null ? [] : [{ point, loadW: point.loadW.value }]))
    .sort((a, b) => a.loadW - b.loadW);
}

/** A load counts as none up to this share of the full load. */
const NO_LOAD_SHARE = 0.05;

/**
 * No load and full load of a sweep: the lowest load, and the highest that is no overload and was held.
 *
 * @returns a reason where one of them was not captured.
 */
export function sweepEnds(
  points: readonly BenchPoint[],
): { readonly noLoad: LoadedPoint; readonly fullLoad: LoadedPoint } | { readonly reason: BenchReason } {
  const loaded = byLoad(points).filter(
    ({ point }) => point.rmsV.value !== null && !point.overload && point.lost === undefined,
  );
  const [noLoad] = loaded;
  const fullLoad = loaded.at(-1);
  if (noLoad === undefined || fullLoad === undefined) return { reason: { code: 'sweep.noKnownLoad' } };
  if (noLoad.loadW === fullLoad.loadW) return { reason: { code: 'sweep.oneLoad' } };
  if (noLoad.loadW > NO_LOAD_SHARE * fullLoad.loadW) return { reason: { code: 'sweep.noIdle' } };
  return { noLoad, fullLoad };
}
