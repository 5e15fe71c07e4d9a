import { hypot } from '../base/elementary.ts';
import type { Figure } from '../base/figure.ts';
import { moments } from '../signal/statistics.ts';
import { budgeted } from './doubt/budget.ts';
import { type Component, type ScaleSource, scaleComponents, scatter, within } from './doubt/component.ts';
import { type Instrument, OFFSET_PERCENT_OF_RANGE } from './doubt/instrument.ts';
import { type FigureThatNeeds, figuresThatNeed } from './figures.ts';
import type { LocatedWave } from './locateWave.ts';
import type { WaveInput } from './measuredWave.ts';
import type { WaveFigures } from './waveFigures.ts';

/** The figures of DC, noise or a voltage too brief to repeat: mean, RMS and extremes over the whole record; the rest needs a period. */
export function aperiodicFigures(
  input: WaveInput,
  located: LocatedWave,
  instrument: Instrument,
  scaleSource: ScaleSource,
): WaveFigures {
  const { mean, standardDeviation, count, max, min } = moments(located.samples);
  const acRms = standardDeviation * Math.sqrt((count - 1) / count);
  const offset = instrument.offsetV ?? (OFFSET_PERCENT_OF_RANGE / 100) * (max - min);
  const own: readonly Component[] = [
    scatter('noise', standardDeviation / Math.sqrt(count), 'U'),
    within('vertical offset', offset, 'U', 1),
    within('rounding to codes', (input.stepSize ?? 0) / 2, 'U', 1),
  ];
  const inVolts = (value: number): Figure =>
    budgeted(value, [...scaleComponents(value, instrument, scaleSource), ...own]);
  const missing: Figure = {
    value: null,
    reason: {
      noise: 'noise: nothing repeats',
      brief: 'the voltage is there for under 1.3 cycles: nothing repeats',
      constant: 'a direct voltage: nothing repeats',
      direct: 'a direct voltage: nothing repeats',
    }[located.aperiodic ?? 'constant'],
  };
  // Over what is mostly without voltage a mean tells nothing of it.
  const isBrief = located.aperiodic === 'brief';
  const ofVoltage: Readonly<Record<FigureThatNeeds<'voltage'>, Figure>> = isBrief
    ? figuresThatNeed('voltage', missing)
    : { rms: inVolts(hypot(mean, acRms)), mean: inVolts(mean), acRms: inVolts(acRms) };
  return {
    spanS: [located.startS, located.startS + located.samples.length * input.intervalS],
    cyclesUsed: 0,
    max: inVolts(max),
    min: inVolts(min),
    bandwidthHz: { value: 0.5 / input.intervalS, uncertainty: 0 },
    ...ofVoltage,
    ...(input.acCoupled ? { mean: AC_COUPLED } : {}),
    ...figuresThatNeed('period', missing),
    thdOrders: 0,
    harmonics: [],
    notices: [],
  };
}

/** The mean of a channel whose DC was blocked: "not measurable", never "no DC". */
export const AC_COUPLED: Figure = {
  value: null,
  reason: 'not measurable: the channel was AC-coupled, which blocks DC',
};
