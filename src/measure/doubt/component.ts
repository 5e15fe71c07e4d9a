import type { Instrument } from './instrument.ts';

/** Shape of what is known about one influence (JCGM 100:2008, 4.2 and 4.3). */
export type Distribution =
  /** Many small causes, or a mean of many samples. */
  | 'normal'
  /** Anywhere within ± half-width alike. */
  | 'rectangular'
  /** A sine of unknown phase and known amplitude: more often near ± its amplitude. */
  | 'arcsine'
  /** The part along one direction of a phasor of unknown phase, its size anywhere from 0 to D: u = D/√6. */
  | 'phasor'
  /** A mean of few values, with `degreesOfFreedom`. */
  | 'student';

/** One line of an uncertainty budget: an influence on a figure. Independent of the other lines. */
export interface Component {
  /** What it is, in words: "vertical gain", "noise". */
  readonly source: string;
  /** A: from the scatter of the record itself; B: from anything else. */
  readonly type: 'A' | 'B';
  readonly distribution: Distribution;
  /** Of the influence, in `unit`; ≥ 0. */
  readonly standardUncertainty: number;
  /** Of `standardUncertainty`: "%", "V", "ppm". */
  readonly unit: string;
  /** What one unit of the influence does to the figure, in the figure's unit per `unit`. */
  readonly sensitivity: number;
  /** Of a Student distribution, > 0; absent: known as well as need be. */
  readonly degreesOfFreedom?: number;
}

/** What a component contributes to the figure's standard uncertainty, in the figure's unit, ≥ 0. */
export function contribution({ standardUncertainty, sensitivity }: Component): number {
  return Math.abs(sensitivity) * standardUncertainty;
}

/** A type B component known only to lie within ± halfWidth: u = halfWidth / √3 (JCGM 100:2008, 4.3.7). */
export function within(source: string, halfWidth: number, unit: string, sensitivity: number): Component {
  return {
    source,
    type: 'B',
    distribution: 'rectangular',
    standardUncertainty: halfWidth / Math.sqrt(3),
    unit,
    sensitivity,
  };
}

/**
 * What one scope with its probes does to every capture alike, as long as nobody turns a knob: an unknown constant. Noise,
 * rounding, and edges between samples are drawn anew for each capture.
 *
 * @remarks The scope's own distortion is left out: it follows the height and the shape of the wave, so that two waves
 * may be distorted differently.
 */
const OF_INSTRUMENT = [
  'vertical gain',
  'probe ratio',
  'vertical offset',
  'time base',
  'bandwidth',
  'vertical gain of the first channel',
  'probe ratio of the first channel',
  'vertical gain of the second channel',
  'probe ratio of the second channel',
  'accuracy of the meter',
  'time between the two probes',
] as const;

/** An influence that captures through one instrument share, known only to lie within ± halfWidth. */
export function alikeWithin(
  source: (typeof OF_INSTRUMENT)[number],
  halfWidth: number,
  unit: string,
  sensitivity: number,
): Component {
  return within(source, halfWidth, unit, sensitivity);
}

/** True of an influence that captures through one instrument share. */
export function isOfInstrument({ source }: Component): boolean {
  return (OF_INSTRUMENT as readonly string[]).includes(source);
}

/** A type B component within ± halfWidth and as often as not near one of its ends: u = halfWidth / √2. */
export function nearEnds(source: string, halfWidth: number, unit: string, sensitivity: number): Component {
  return {
    ...within(source, halfWidth, unit, sensitivity),
    distribution: 'arcsine',
    standardUncertainty: halfWidth / Math.SQRT2,
  };
}

/** A type A component: the standard deviation of what was estimated from many samples. */
export function scatter(
  source: string,
  standardUncertainty: number,
  unit: string,
  sensitivity = 1,
): Component {
  return { source, type: 'A', distribution: 'normal', standardUncertainty, unit, sensitivity };
}

/** A phasor of 0 … percent and unknown phase that the scope itself may add to an order (type B). */
export function ownDistortion(percent: number, sensitivity: number): Component {
  return {
    source: "the scope's own distortion",
    type: 'B',
    distribution: 'phasor',
    standardUncertainty: percent / Math.sqrt(6),
    unit: '%',
    sensitivity,
  };
}

/** Where the volts of a result get their scale from. */
export type ScaleSource = 'scope and probe' | 'meter' | DifferenceScale;

/** The scale of a difference of two channels: two gains, two ratios, and the time between them. */
interface DifferenceScale {
  /** Of the difference's RMS, in U. */
  readonly components: readonly Component[];
  /** That RMS, > 0, in U. */
  readonly rms: number;
}

/** What the scale of a reading may be off by: gain and probe, or the meter that it is tied to. */
export function scaleComponents(value: number, instrument: Instrument, source: ScaleSource): Component[] {
  if (source === 'meter')
    return [alikeWithin('accuracy of the meter', instrument.meterPercent, '%', value / 100)];
  if (source === 'scope and probe') {
    return [
      alikeWithin('vertical gain', instrument.gainPercent, '%', value / 100),
      alikeWithin('probe ratio', instrument.probePercent, '%', value / 100),
    ];
  }
  return source.components.map((component) => ({
    ...component,
    sensitivity: (component.sensitivity * value) / source.rms,
  }));
}
