import { hypot } from '../../base/elementary.ts';
import { extremes } from '../../signal/statistics.ts';
import {
  type Component,
  contribution,
  type ScaleSource,
  scaleComponents,
  scatter,
  within,
} from '../doubt/component.ts';
import { type Instrument, OFFSET_PERCENT_OF_RANGE } from '../doubt/instrument.ts';
import type { PowerBasis } from './nonsinusoidalPower.ts';

/** One of the two channels, as far as its doubt goes; U stands for its unit. */
export interface DoubtedChannel {
  readonly samples: Float64Array;
  readonly mean: number;
  /** Standard deviation of the noise of one sample. */
  readonly noise: number;
  readonly instrument: Instrument;
  readonly scaleSource: ScaleSource;
}

interface PowerDoubts {
  readonly basis: PowerBasis;
  readonly voltage: DoubtedChannel;
  readonly current: DoubtedChannel;
  /** Samples that a whole-cycle mean's noise averages over: 1 / Σ w². */
  readonly averagedSamples: number;
  /** How far the skew between the channels may be off, each way. */
  readonly skewDoubtS: number;
  /** Of the fundamental, radians a second. */
  readonly omegaPerS: number;
  /** What a second less delay of the current adds to PH. */
  readonly harmonicWPerS: number;
  /** What the RMS may be off by where edges fall between samples, %. */
  readonly edgePercent: number;
}

/**
 * What may have moved the powers: scale, offset, own distortion and noise of either channel, the time
 * between the two, and edges that fall between samples.
 */
export function powerInfluences(doubts: PowerDoubts): PowerInfluence[] {
  const { basis, voltage, current, omegaPerS } = doubts;
  const { fundamentalV, harmonicV, inPhaseA, laggingA, harmonicA, harmonicActiveW } = basis;
  const fundamentalA = hypot(inPhaseA, laggingA);
  const harmonic = harmonicActiveW / 100;
  const voltsPerCent = {
    fundamentalV: fundamentalV / 100,
    harmonicV: harmonicV / 100,
    harmonicActiveW: harmonic,
  };
  const amperesPerCent = {
    inPhaseA: inPhaseA / 100,
    laggingA: laggingA / 100,
    harmonicA: harmonicA / 100,
    harmonicActiveW: harmonic,
  };
  const noise = (of: DoubtedChannel, name: string): Component =>
    scatter(name, of.noise / Math.sqrt(doubts.averagedSamples), 'U');
  return [
    ...scales(voltage, 'voltage', voltsPerCent),
    ...scales(current, 'current', amperesPerCent),
    {
      component: offset(voltage, 'voltage'),
      perUnit: { harmonicV: share(voltage.mean, harmonicV), harmonicActiveW: current.mean },
    },
    {
      component: offset(current, 'current'),
      perUnit: { harmonicA: share(current.mean, harmonicA), harmonicActiveW: voltage.mean },
    },
    {
      component: distortion(voltage, 'voltage'),
      perUnit: { harmonicV: fundamentalV / 100, harmonicActiveW: (fundamentalV * harmonicA) / 100 },
    },
    {
      component: distortion(current, 'current'),
      perUnit: { harmonicA: fundamentalA / 100, harmonicActiveW: (fundamentalA * harmonicV) / 100 },
    },
    { component: countedNoise(voltage, harmonicV, 'voltage'), perUnit: { harmonicV: 1 } },
    { component: countedNoise(current, harmonicA, 'current'), perUnit: { harmonicA: 1 } },
    { component: noise(voltage, 'noise of the voltage'), perUnit: { fundamentalV: 1 } },
    {
      // A voltage turned forward sees the current further behind.
      component: noise(voltage, 'noise of the voltage, across'),
      perUnit: { inPhaseA: -laggingA / fundamentalV, laggingA: inPhaseA / fundamentalV },
    },
    {
      component: noise(voltage, 'noise of the voltage, in its harmonics'),
      perUnit: { harmonicV: 1, harmonicActiveW: harmonicA },
    },
    { component: noise(current, 'noise of the current'), perUnit: { inPhaseA: 1 } },
    { component: noise(current, 'noise of the current, across'), perUnit: { laggingA: 1 } },
    {
      component: noise(current, 'noise of the current, in its harmonics'),
      perUnit: { harmonicA: 1, harmonicActiveW: harmonicV },
    },
    {
      component: within('time between probe and clamp', doubts.skewDoubtS, 's', 1),
      perUnit: {
        inPhaseA: omegaPerS * laggingA,
        laggingA: -omegaPerS * inPhaseA,
        harmonicActiveW: doubts.harmonicWPerS,
      },
    },
    {
      // The same edges move both.
      component: within('edges between samples', doubts.edgePercent, '%', 1),
      perUnit: { ...voltsPerCent, ...amperesPerCent, harmonicActiveW: 2 * harmonic },
    },
  ];
}

function scales(
  { instrument, scaleSource }: DoubtedChannel,
  name: string,
  perUnit: Partial<PowerBasis>,
): PowerInfluence[] {
  return scaleComponents(100, instrument, scaleSource).map((component) => ({
    component: { ...component, source: `${component.source} of the ${name}` },
    perUnit,
  }));
}

function offset(channel: DoubtedChannel, name: string): Component {
  return within(`vertical offset of the ${name}`, offsetHalfWidth(channel), 'U', 1);
}

/** What the channel's zero may be off by, each way, in U. */
function offsetHalfWidth({ samples, instrument }: DoubtedChannel): number {
  if (instrument.offsetV !== null) return instrument.offsetV;
  const { max, min } = extremes(samples);
  return (OFFSET_PERCENT_OF_RANGE / 100) * (max - min);
}

/** A phasor of up to so many % of the fundamental and unknown phase. */
function distortion({ instrument }: DoubtedChannel, name: string): Component {
  return {
    source: `the scope's own distortion of the ${name}`,
    type: 'B',
    distribution: 'phasor',
    standardUncertainty: instrument.distortionPercent / Math.sqrt(6),
    unit: '%',
    sensitivity: 1,
  };
}

/**
 * VH and IH are what is left beside the fundamental, so that they hold the noise too: VH² = true² + σ². The
 * scope's part in it is not known; up to the whole of it is too much.
 */
function countedNoise({ noise }: DoubtedChannel, harmonicRms: number, name: string): Component {
  const without = Math.sqrt(Math.max(0, harmonicRms ** 2 - noise ** 2));
  return {
    source: `noise counted with the harmonics of the ${name}`,
    type: 'B',
    distribution: 'normal',
    standardUncertainty: harmonicRms - without,
    unit: 'U',
    sensitivity: 1,
  };
}

/** mean / rms; nothing of nothing. */
function share(mean: number, rms: number): number {
  return rms > 0 ? mean / rms : 0;
}

/** Something that may have moved the basis, and which way. */
interface PowerInfluence {
  /** Its sensitivity is 1: it is passed on to each figure by `propagated`. */
  readonly component: Component;
  /** What one unit of the component adds to the basis; absent: nothing. */
  readonly perUnit: Partial<PowerBasis>;
}

/**
 * The components of one figure: each influence, with the sensitivity found by moving the basis by the
 * influence's own standard uncertainty, up and down.
 *
 * @param figure - the figure as a function of the basis.
 * @remarks The larger side counts: N and the power factor turn round at a resistive load, where half the
 * difference of the sides would be nothing.
 * @see JCGM 100:2008, 5.1.3, note 2.
 */
export function propagated(
  basis: PowerBasis,
  influences: readonly PowerInfluence[],
  figure: (basis: PowerBasis) => number,
): Component[] {
  const value = figure(basis);
  return influences
    .filter(({ component }) => contribution(component) > 0)
    .map(({ component, perUnit }) => {
      const step = component.standardUncertainty;
      const up = figure(moved(basis, perUnit, step)) - value;
      const down = figure(moved(basis, perUnit, -step)) - value;
      return { ...component, sensitivity: (Math.abs(up) >= Math.abs(down) ? up : -down) / step };
    });
}

function moved(basis: PowerBasis, perUnit: Partial<PowerBasis>, step: number): PowerBasis {
  const shifted = { ...basis };
  for (const key of Object.keys(perUnit) as (keyof PowerBasis)[]) {
    shifted[key] = basis[key] + step * perUnit[key]!;
  }
  return shifted;
}

interface FloorInput {
  readonly basis: PowerBasis;
  readonly voltage: DoubtedChannel;
  readonly current: DoubtedChannel;
  readonly averagedSamples: number;
  readonly skewDoubtS: number;
  readonly omegaPerS: number;
}

/**
 * What the measuring chain alone would show on this voltage at a resistor that takes as much current: nothing but
 * fundamentals in phase, and beside them the scope's own distortion, the noise counted in, as much of each mean as an
 * offset may be, and the time between probe and clamp.
 */
export function floorBasis(input: FloorInput): PowerBasis {
  const { basis, voltage, current, averagedSamples, skewDoubtS, omegaPerS } = input;
  const fundamentalA = hypot(basis.inPhaseA, basis.laggingA);
  const beside = (channel: DoubtedChannel, fundamental: number): number =>
    hypot(
      (channel.instrument.distortionPercent / 100) * fundamental,
      channel.noise,
      Math.min(Math.abs(channel.mean), offsetHalfWidth(channel)),
    );
  return {
    fundamentalV: basis.fundamentalV,
    harmonicV: beside(voltage, basis.fundamentalV),
    inPhaseA: fundamentalA,
    laggingA: hypot(omegaPerS * skewDoubtS * fundamentalA, current.noise / Math.sqrt(averagedSamples)),
    harmonicA: beside(current, fundamentalA),
    harmonicActiveW: 0,
  };
}
