import type { Figure } from '../../base/figure.ts';
import { MeasureError } from '../../base/measureError.ts';
import type { Notice } from '../../base/notice.ts';
import { wholeCycleWeights } from '../../signal/wholeCycleWeights.ts';
import { budgeted } from '../uncertainty/budget.ts';
import { directChannel } from './directChannel.ts';
import type { SampledChannel } from './fittedChannel.ts';
import type { Chain } from './measurePower.ts';
import { weightedMean } from './weightedMean.ts';

export interface DirectPowerInput {
  readonly voltage: SampledChannel;
  /** On the same time base, as long as the voltage. */
  readonly current: SampledChannel;
  /** Period of the AC side: an inverter draws its current in pulses, so that means are taken over whole
   * cycles. Absent: over the whole record. */
  readonly periodS?: number;
  readonly voltageChain?: Chain;
  readonly currentChain?: Chain;
}

/** A DC input: means, power and ripple. */
export interface DirectPowerFigures {
  /** Mean of volts times amperes, sample by sample; positive where power goes in. */
  readonly activeW: Figure;
  readonly meanV: Figure;
  readonly meanA: Figure;
  /** RMS without the mean. */
  readonly rippleV: Figure;
  readonly rippleA: Figure;
  /** Ripple over mean. */
  readonly rippleVoltagePercent: Figure;
  readonly rippleCurrentPercent: Figure;
  readonly notices: readonly Notice[];
}

/**
 * Mean power at a DC input, where the current pulses at twice the outlet's frequency.
 *
 * P = Σ w·v·i, which is not mean V · mean I where both ripple
 *
 * @throws MeasureError `power.noSamples` where the two hold no sample in common.
 * @throws RangeError where the two don't stand on one time base.
 */
export function measureDirectPower(input: DirectPowerInput): DirectPowerFigures {
  const { voltage, current, periodS } = input;
  if (
    voltage.samples.length !== current.samples.length ||
    Math.abs(voltage.startS - current.startS) > 0.25 * voltage.intervalS
  ) {
    throw new RangeError('power of two channels that do not share a time base');
  }
  const weights = presentWeights(voltage, current, periodS);
  const volts = directChannel(voltage, weights, 'voltage', input.voltageChain);
  const amperes = directChannel(current, weights, 'current', input.currentChain);
  const power = weightedMean(weights, (n) => voltage.samples[n]! * current.samples[n]!);
  const activeW = budgeted(power, [
    ...volts.scale(power),
    ...amperes.scale(power),
    ...volts.reading(amperes.mean),
    ...amperes.reading(volts.mean),
  ]);
  return {
    activeW,
    meanV: volts.meanFigure,
    meanA: amperes.meanFigure,
    rippleV: volts.ripple,
    rippleA: amperes.ripple,
    rippleVoltagePercent: volts.ripplePercent,
    rippleCurrentPercent: amperes.ripplePercent,
    notices: activeW.value < -activeW.uncertainty ? [NEGATIVE] : [],
  };
}

const NEGATIVE: Notice = {
  code: 'power.negative',
  message:
    'Power at the DC input comes out negative: the probe or the clamp is the wrong way round, or the battery is being charged. Turn the clamp round, or turn its channel upside down (--invert NAME).',
};

/** Weights of the samples that both channels hold, 0 for the others, sum 1. */
function presentWeights(voltage: SampledChannel, current: SampledChannel, periodS?: number): Float64Array {
  const { samples, intervalS } = voltage;
  const periodSamples = periodS === undefined ? Infinity : periodS / intervalS;
  const whole =
    periodSamples <= samples.length ? wholeCycleWeights(samples.length, periodSamples) : { at: () => 1 };
  const weights = samples.map((_, n) => whole.at(n));
  let sum = 0;
  for (let n = 0; n < weights.length; n++) {
    if (Number.isNaN(samples[n]! + current.samples[n]!)) weights[n] = 0;
    sum += weights[n]!;
  }
  if (sum === 0) {
    throw new MeasureError('power.noSamples', 'Voltage and current hold no sample in common.', {
      expected: 'two channels of one record',
      received: 'channels that are never present together',
      advice: 'save both channels together',
    });
  }
  return weights.map((w) => w / sum);
}
