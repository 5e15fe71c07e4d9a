import { atan2, cos, sin } from '../base/elementary.ts';
import type { HarmonicFit } from './harmonicFit.ts';
import { lineReader } from './lineSpectrum.ts';
import type { Residual } from './residual.ts';

interface WindowLinesOptions {
  /** Cycles of the fundamental a window, N, whole, ≥ 1. */
  readonly cycles: number;
  /** Lines 0 to count − 1, a cycle over N apart; the highest must stay below half the sample rate. */
  readonly count: number;
  /** Windows at most, from the start of the record. Default all. */
  readonly windows?: number;
}

/** The lines of one window. */
interface WindowLines {
  /** Shape count: squared RMS of line k, in U²; line 0 is the mean's square. */
  readonly squares: Float64Array;
  /** Of the fundamental, line N, against that of the fit, radians in (−π, π]. */
  readonly fundamentalPhaseRad: number;
}

/**
 * Fourier lines of contiguous windows of N cycles of the fitted fundamental, rectangular, from the record's
 * start: line k lies at k/N of the fundamental, order h on line N·h.
 *
 * A window need not be a whole number of samples. What the fitted series puts into a line is exact; only the
 * residual is summed, the samples that a window's ends cut counting by the part inside.
 *
 * @param fit - of the record. A missing sample's residual counts as 0, so that the fit stands in a gap.
 * @returns one element a whole window, in order; none where the record is shorter than one.
 * @remarks Cutting samples at fractional ends moves a line by up to (s + θr) / (2L) RMS: L samples a window, r the
 * residual's size at the ends, s its change from sample to sample there, θ the line's radians a sample. Nothing
 * where the window is a whole number of samples. Cost linear in the samples.
 */
export function windowLines(fit: HarmonicFit, options: WindowLinesOptions): readonly WindowLines[] {
  const { cycles, count } = options;
  const length = (2 * Math.PI * cycles) / fit.omega;
  // A record of exactly so many windows must not lose the last one to rounding.
  const held = Math.floor(fit.residual.length / length + 1e-6);
  // Windows are a sample longer or shorter, by where they start.
  const room = new Float64Array(Math.ceil(length) + 1);
  const read = lineReader(room.length, fit.omega / cycles, count);
  return Array.from({ length: Math.min(held, options.windows ?? held) }, (_, index) =>
    linesOf({ fit, cycles, count, length, read, room }, index * length),
  );
}

type LineReader = ReturnType<typeof lineReader>;

/** What all windows of a record share. */
interface WindowReading {
  readonly fit: HarmonicFit;
  readonly cycles: number;
  readonly count: number;
  /** Of a window, in samples, not rounded. */
  readonly length: number;
  readonly read: LineReader;
  /** For the samples of a window, and what is left of it zero. */
  readonly room: Float64Array;
}

function linesOf({ fit, cycles, count, length, read, room }: WindowReading, from: number): WindowLines {
  const spacing = fit.omega / cycles;
  const first = Math.floor(from + 1e-9);
  const { re, im } = read(insideWindow(fit.residual, from, from + length, room));
  // The fit counts its phases from the record's centre.
  const back = first - (fit.residual.length - 1) / 2;
  const squares = new Float64Array(count);
  squares[0] = (fit.mean + re[0]! / length) ** 2;
  let fundamentalPhaseRad = 0;
  for (let k = 1; k < count; k++) {
    const turn = -spacing * k * back;
    const scale = 2 / length;
    let lineRe = scale * (re[k]! * cos(turn) - im[k]! * sin(turn));
    let lineIm = scale * (im[k]! * cos(turn) + re[k]! * sin(turn));
    const order = k % cycles === 0 ? k / cycles : 0;
    if (order >= 1 && order <= fit.cosine.length) {
      lineRe += fit.cosine[order - 1]!;
      lineIm -= fit.sine[order - 1]!;
      if (order === 1) {
        fundamentalPhaseRad = angleBetween(lineRe, lineIm, fit.cosine[0]!, -fit.sine[0]!);
      }
    }
    squares[k] = (lineRe * lineRe + lineIm * lineIm) / 2;
  }
  return { squares, fundamentalPhaseRad };
}

/**
 * The residual from ⌊from⌋ on, each sample by the part of its interval [n, n + 1) that the window holds; zeros behind.
 *
 * @returns `room`.
 */
function insideWindow(residual: Residual, from: number, to: number, room: Float64Array): Float64Array {
  const first = Math.floor(from + 1e-9);
  const end = Math.min(residual.length, Math.ceil(to - 1e-9));
  const inside = room.subarray(0, end - first);
  const held = residual.stretch(first, end, inside);
  if (held.buffer !== inside.buffer) inside.set(held);
  room.fill(0, inside.length);
  fillMissing(inside);
  for (const i of new Set([0, inside.length - 1])) {
    inside[i]! *= Math.min(first + i + 1, to) - Math.max(first + i, from);
  }
  return room;
}

function fillMissing(residual: Float64Array): void {
  for (let i = 0; i < residual.length; i++) if (Number.isNaN(residual[i]!)) residual[i] = 0;
}

function angleBetween(aRe: number, aIm: number, bRe: number, bIm: number): number {
  return atan2(aIm * bRe - aRe * bIm, aRe * bRe + aIm * bIm);
}
