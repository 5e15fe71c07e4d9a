import type { MeasuredFigure } from '../../src/base/figure.ts';
import type { WaveformKind } from '../../src/judge/waveform/kinds.ts';
import type { Waveform } from '../../src/judge/waveform/waveform.ts';
import { figuresThatNeed } from '../../src/measure/figures.ts';
import type { Harmonic, WaveFigures } from '../../src/measure/waveFigures.ts';

/** A figure without doubt unless one is given. */
export function exactly(value: number, uncertainty = 0): MeasuredFigure {
  return { value, uncertainty };
}

/**
 * The figures of an ideal wave of invented size: a sine of that fundamental plus harmonics in percent of it,
 * by order, without doubt and without DC. Crest and form factor are a sine's; a test changes what it needs.
 */
export function figuresWith(
  changes: Partial<WaveFigures> = {},
  fundamentalV = 120,
  harmonicPercent: ReadonlyMap<number, number> = new Map(),
): WaveFigures {
  const harmonics: Harmonic[] = Array.from({ length: 50 }, (_, i) => {
    const percent = i === 0 ? 100 : (harmonicPercent.get(i + 1) ?? 0);
    return { order: i + 1, rms: (percent / 100) * fundamentalV, percent, phaseDeg: 0 };
  });
  const thd = Math.hypot(...harmonics.slice(1).map(({ percent }) => percent));
  const rms = Math.hypot(...harmonics.map((harmonic) => harmonic.rms));
  const untold = { value: null, reason: 'not told by the test' };
  return {
    ...figuresThatNeed('samples', untold),
    ...figuresThatNeed('voltage', untold),
    ...figuresThatNeed('period', untold),
    spanS: [0, 0.1],
    cyclesUsed: 6,
    frequencyHz: exactly(60),
    rms: exactly(rms),
    mean: exactly(0),
    peak: exactly(Math.SQRT2 * rms),
    trough: exactly(-Math.SQRT2 * rms),
    max: exactly(Math.SQRT2 * rms),
    min: exactly(-Math.SQRT2 * rms),
    crestFactor: exactly(Math.SQRT2),
    formFactor: exactly(Math.PI / (2 * Math.SQRT2)),
    fundamental: exactly(fundamentalV),
    thdPercent: exactly(thd),
    thdOfRmsPercent: exactly((thd * fundamentalV) / rms),
    thdOrders: 50,
    thdNoisePercent: exactly(thd),
    bandwidthHz: exactly(1e6),
    deviationFactorPercent: exactly(0),
    dwellPercent: exactly(0),
    edgeSlope: { value: null, reason: 'no edges' },
    zeroCrossingsPerCycle: exactly(2),
    averageResponding: exactly(rms),
    acRms: exactly(rms),
    harmonics,
    notices: [],
    ...changes,
  };
}

/** Harmonics of a three-level wave, zero step of 2α: V_n/V_1 = cos(nα) / (n cos α), odd orders; α = 0: a square. */
export function threeLevelHarmonics(alphaDeg: number): ReadonlyMap<number, number> {
  const alpha = (alphaDeg * Math.PI) / 180;
  const odd = Array.from({ length: 24 }, (_, i) => 2 * i + 3);
  return new Map(odd.map((n) => [n, Math.abs((100 * Math.cos(n * alpha)) / (n * Math.cos(alpha)))]));
}

export function waveformOf(kind: WaveformKind, changes: Partial<Waveform> = {}): Waveform {
  return { kind, reasons: ['invented for a test'], levels: 0, atTheEdge: false, ...changes };
}
