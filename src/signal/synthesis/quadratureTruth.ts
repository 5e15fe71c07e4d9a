import { cos } from '../../base/elementary/cos.ts';
import { sin } from '../../base/elementary/sin.ts';
import { gaussLegendre } from './gaussLegendre.ts';
import { harmonicOf } from './harmonicOf.ts';
import { integral } from './integral.ts';
import type { Piece } from './piece.ts';
import { signChanges } from './signChanges.ts';
import { supremum } from './supremum.ts';
import type { TruthCore } from './waveTruth.ts';

/**
 * The truth of a wave by numerical quadrature of its exact shape, piece by piece, for shapes or figures
 * without a closed form.
 *
 * @param at - the wave, one cycle long, smooth between the breaks.
 * @param breaks - phases in cycles where it jumps or has a corner: ascending, in [0, 1). May be empty.
 * @param fastestOrder - highest order that the shape itself contains between the breaks.
 * @returns relative accuracy 1e-10 or better while the pieces are smooth.
 */
export function quadratureTruth(
  at: (phaseCycles: number) => number,
  breaks: readonly number[],
  fastestOrder: number,
): TruthCore {
  const rule = gaussLegendre(20);
  const pieces = piecesBetween(breaks);
  const overCycle = (f: (phase: number) => number, order: number): number =>
    pieces.reduce((total, [from, to]) => {
      const panels = 2 + Math.ceil(2 * (order + fastestOrder) * (to - from));
      return total + integral(f, from, to, panels, rule);
    }, 0);
  return {
    rms: Math.sqrt(overCycle((phase) => at(phase) ** 2, fastestOrder)),
    mean: overCycle(at, 0),
    peak: supremum(at, pieces, fastestOrder),
    trough: -supremum((phase) => -at(phase), pieces, fastestOrder),
    meanAbsoluteAbout: (level) => {
      const above = (phase: number): number => at(phase) - level;
      const splits = pieces.flatMap((piece) => signChanges(above, piece, fastestOrder));
      return splits.reduce((total, [from, to]) => {
        const panels = 2 + Math.ceil(2 * fastestOrder * (to - from));
        return total + Math.abs(integral(above, from, to, panels, rule));
      }, 0);
    },
    harmonic: (order) => {
      const k = 2 * Math.PI * order;
      return harmonicOf(
        2 * overCycle((phase) => at(phase) * cos(k * phase), order),
        2 * overCycle((phase) => at(phase) * sin(k * phase), order),
      );
    },
  };
}

function piecesBetween(breaks: readonly number[]): readonly Piece[] {
  const first = breaks[0] ?? 0;
  const ends = [...breaks.slice(1), first + 1];
  return ends.map((end, i) => [breaks[i] ?? 0, end] as const).filter(([from, to]) => to > from);
}
