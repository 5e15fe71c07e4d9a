import { cos, sin } from '../base/elementary.ts';
import type { WaveformKind } from '../judge/waveform/kinds.ts';
import { harmonicOf, type KnownHarmonic, type KnownWave, waveTruth } from './knownWave.ts';
import { quadratureTruth } from './quadratureTruth.ts';

/** A corner of a wave made of straight lines. Two at one phase make a jump. */
export interface Vertex {
  readonly phaseCycles: number;
  readonly value: number;
}

interface Line {
  readonly from: number;
  readonly to: number;
  readonly start: number;
  readonly end: number;
}

/**
 * A periodic wave of straight lines, and its truth in closed form: every integral over a line is one of
 * a polynomial, alone or times a sine.
 *
 * @param vertices - at least one, phases ascending and spanning at most one cycle; the last joins the
 * first of the next cycle.
 * @throws RangeError where the phases run backwards: edges that overlap.
 */
export function polylineWave(kind: WaveformKind, vertices: readonly [Vertex, ...Vertex[]]): KnownWave {
  const lines = linesBetween(vertices);
  const values = vertices.map((vertex) => vertex.value);
  const sum = (term: (line: Line) => number): number =>
    lines.reduce((total, line) => total + (line.to - line.from) * term(line), 0);
  return {
    kind,
    at: (phaseCycles) => valueAt(lines, vertices[0].phaseCycles, phaseCycles),
    truth: waveTruth({
      rms: Math.sqrt(sum(({ start, end }) => (start * start + start * end + end * end) / 3)),
      mean: sum(({ start, end }) => (start + end) / 2),
      peak: Math.max(...values),
      trough: Math.min(...values),
      meanAbsoluteAbout: (level) => sum(({ start, end }) => meanAbsolute(start - level, end - level)),
      harmonic: (order) => harmonicOfLines(lines, order),
    }),
  };
}

function linesBetween(vertices: readonly [Vertex, ...Vertex[]]): readonly Line[] {
  const closing = { phaseCycles: vertices[0].phaseCycles + 1, value: vertices[0].value };
  return vertices.map((vertex, i) => {
    const next = vertices[i + 1] ?? closing;
    if (!(next.phaseCycles >= vertex.phaseCycles)) {
      throw new RangeError(`edges overlap near phase ${vertex.phaseCycles}`);
    }
    return { from: vertex.phaseCycles, to: next.phaseCycles, start: vertex.value, end: next.value };
  });
}

function valueAt(lines: readonly Line[], firstPhase: number, phaseCycles: number): number {
  const phase = phaseCycles - Math.floor(phaseCycles - firstPhase);
  let low = 0;
  let high = lines.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((lines[middle] as Line).from <= phase) low = middle;
    else high = middle - 1;
  }
  const { from, to, start, end } = lines[low] as Line;
  return to > from ? start + ((end - start) * (phase - from)) / (to - from) : end;
}

/** Mean of |v| over a line from `start` to `end`: two triangles where it crosses zero. */
function meanAbsolute(start: number, end: number): number {
  if (start * end >= 0) return Math.abs(start + end) / 2;
  return (start * start + end * end) / (2 * (Math.abs(start) + Math.abs(end)));
}

/** By parts: ∫ y cos kx = [y sin kx]/k + y′[cos kx]/k², ∫ y sin kx = −[y cos kx]/k + y′[sin kx]/k². */
function harmonicOfLines(lines: readonly Line[], order: number): KnownHarmonic {
  const k = 2 * Math.PI * order;
  let cosine = 0;
  let sine = 0;
  for (const { from, to, start, end } of lines) {
    if (to === from) continue;
    // The differences of cosines and sines as products: exact also for edges far shorter than a cycle.
    const bend = (2 * (end - start) * sin((k * (to - from)) / 2)) / (k * (to - from));
    const middle = (k * (from + to)) / 2;
    cosine += end * sin(k * to) - start * sin(k * from) - bend * sin(middle);
    sine += start * cos(k * from) - end * cos(k * to) + bend * cos(middle);
  }
  return harmonicOf((2 * cosine) / k, (2 * sine) / k);
}

/**
 * The two corners of a straight edge.
 *
 * @param phaseCycles - the edge's middle.
 * @param from - value before it.
 * @param to - value after it.
 * @param widthCycles - how long it takes, as a fraction of the period; 0 makes a jump.
 */
export function edge(
  phaseCycles: number,
  from: number,
  to: number,
  widthCycles: number,
): readonly [Vertex, Vertex] {
  return [
    { phaseCycles: phaseCycles - widthCycles / 2, value: from },
    { phaseCycles: phaseCycles + widthCycles / 2, value: to },
  ];
}

/** A triangle, peak 1, rising through zero at phase 0. */
export function triangleWave(): KnownWave {
  return polylineWave('distorted sine', [
    { phaseCycles: -0.25, value: -1 },
    { phaseCycles: 0.25, value: 1 },
  ]);
}

/** A half-wave rectified sine, peak 1: 1/π + sin(x)/2 − (2/π) Σ cos(nx)/(n² − 1) over even n. */
export function halfWave(): KnownWave {
  const at = (phaseCycles: number): number => Math.max(0, sin(2 * Math.PI * phaseCycles));
  return {
    kind: 'distorted sine',
    at,
    truth: waveTruth({
      ...quadratureTruth(at, [0, 0.5], 1),
      rms: 0.5,
      mean: 1 / Math.PI,
      peak: 1,
      trough: 0,
      harmonic: (order) => {
        if (order === 1) return harmonicOf(0, 0.5);
        return harmonicOf(order % 2 === 0 ? -2 / (Math.PI * (order ** 2 - 1)) : 0, 0);
      },
    }),
  };
}

/** A constant: 1 unless told, and 0 for a record of nothing but noise. */
export function directCurrent(level: number = 1): KnownWave {
  return {
    kind: 'not classified',
    at: () => level,
    truth: waveTruth({
      rms: Math.abs(level),
      mean: level,
      peak: level,
      trough: level,
      meanAbsoluteAbout: (other) => Math.abs(level - other),
      harmonic: () => ({ rms: 0, phaseRad: 0 }),
    }),
  };
}
