import { amountText, rounded } from '../../base/amountText.ts';
import { scaleAtLeast } from '../../measure/digitiser/digitiserAdvice.ts';
import type { MeasureErrors } from '../../measure/measureErrors.ts';
import { MINIMUM_CYCLES } from '../../signal/recordParts.ts';
import { reasonText } from '../reasons.ts';
import type { ErrorWords } from './wording.ts';

const PERIODS = `at least ${MINIMUM_CYCLES} periods of a wave`;

export const measureWords: ErrorWords<MeasureErrors> = {
  'wave.noPeriod': ({ isBetweenGaps, min, max, lengthS, cycles }) => {
    const advice = timeBaseAdvice(lengthS, cycles);
    return {
      message: `Nothing repeats${where(isBetweenGaps)}, so there is no wave to measure.`,
      expected: PERIODS,
      received: `values from ${rounded(min, 4)} to ${rounded(max, 4)} over ${amountText(lengthS, 's')}`,
      advice: lengthS < MANY_CYCLES_S ? `measure the AC outlet itself; ${advice}` : advice,
    };
  },
  'wave.noPeriod.fewSamples': ({ samples }) => ({
    message: 'The record holds too few samples to tell a wave from chance.',
    expected: 'some hundred samples over three cycles or more',
    received: `${samples} samples`,
    advice: 'save the whole record of the scope, not the screen picture',
  }),
  'wave.tooShort': ({ isBetweenGaps, lengthS, cycles }) => {
    const about = cycles === null ? 'less than one' : cycles.toFixed(2);
    return {
      message: `The record is too short${where(isBetweenGaps)}: about ${about} of a cycle.`,
      expected: PERIODS,
      received: `about ${about} periods in ${amountText(lengthS, 's')}`,
      advice: timeBaseAdvice(lengthS, cycles),
    };
  },
  'wave.tooCoarse': ({ isBetweenGaps, intervalS }) => ({
    message: `The wave has fewer than eight samples a period${where(isBetweenGaps)}.`,
    expected: 'at least eight samples a period, two hundred for harmonics to order 50',
    received: `one sample every ${amountText(intervalS, 's')}`,
    advice: 'set a faster time base or a deeper memory, so that one cycle has some hundred samples',
  }),
  'power.tooShort': ({ periods, least }) => ({
    message: 'Voltage and current share too short a stretch for a power.',
    expected: `at least ${least} periods that both channels hold`,
    received: `${periods.toFixed(2)} periods`,
    advice: 'save both channels over the same three cycles or more',
  }),
  'power.noSamples': () => ({
    message: 'Voltage and current hold no sample in common.',
    expected: 'two channels of one record',
    received: 'channels that are never present together',
    advice: 'save both channels together',
  }),
  'power.skewTooLong': ({ skewS, mostS }) => ({
    message: `A skew of ${skewS} s is no delay of a probe or clamp.`,
    expected: `less than half a period, ${rounded(mostS, 3)} s`,
    received: `${skewS} s`,
    advice: 'give the delay in seconds: 5 µs is 5e-6',
  }),
  'instrument.key': ({ key, keys }) => ({
    message: `The key "${key}" is not known.`,
    expected: `one of ${keys.join(', ')}`,
    received: key,
    advice: 'check the spelling',
  }),
  'instrument.value': ({ key, value, isAboveZero, example }) => ({
    message: `"${key}" needs a number ${isAboveZero ? 'above zero' : 'of zero or more'}.`,
    expected: `a number such as ${example}`,
    received: value,
    advice: 'give the half-width of the interval, as the data sheet states it, without a unit',
  }),
  'instrument.value.noKeys': ({ keys }) => ({
    message: 'An instrument file holds one "key: number" a line.',
    expected: 'lines such as "gainPercent: 3"',
    advice: `known keys: ${keys.join(', ')}`,
  }),
  'meter.reading': ({ readingV }, option) => ({
    message: 'The meter reading must be a voltage above zero.',
    received: String(readingV),
    advice: `Give what the meter showed, in volts, for example ${option('meter')} 119.6.`,
  }),
  'meter.incomparable': ({ reason }) => ({
    message: 'There is no AC voltage in the file to hold the meter against.',
    ...(reason === null ? {} : { received: reasonText(reason) }),
    advice: 'Leave the meter reading out, or take it on the channel that carries the wave.',
  }),
};

function where(isBetweenGaps: boolean): string {
  return isBetweenGaps ? ' between the gaps of this record' : '';
}

/** A tenth of a second holds five cycles of any mains: then the time base is not what is missing. */
const MANY_CYCLES_S = 0.1;
/** A record so short is of something much faster than mains, or hopelessly too fast for it. */
const FAR_TOO_SHORT_S = 1e-3;
/** Of a screen's width. Common practice, no source. */
const DIVISIONS = 10;

function timeBaseAdvice(lengthS: number, cycles: number | null): string {
  const threeCycles = 'so that the screen holds three cycles or more, and save again';
  if (lengthS >= MANY_CYCLES_S)
    return 'check that the probe is on the AC outlet and that the time axis is in the unit that the file says';
  if (lengthS >= FAR_TOO_SHORT_S) return `set 5 ms/div or slower, ${threeCycles}`;
  if (cycles === null || cycles <= 0)
    return `set a slower time base: the record is ${amountText(lengthS, 's')} long, where a cycle of mains takes 17 or 20 ms`;
  return `set ${amountText(scaleAtLeast((3 * lengthS) / (cycles * DIVISIONS)), 's')}/div or slower, ${threeCycles}`;
}
