import type { AssayErrors } from '../../assay/assayErrors.ts';
import { everyClaimExample, toldByWords } from '../../judge/claims/claimedQuantities.ts';
import type { ClaimLack, JudgeErrors } from '../../judge/judgeErrors.ts';
import type { ErrorWords } from './wording.ts';

/** Of what a person tells: claims, a nominal voltage, a load, options. */
export const toldWords: ErrorWords<JudgeErrors & AssayErrors> = {
  'nominal.grammar': ({ text }) => ({
    message: `"${text}" is not a nominal voltage and frequency.`,
    expected: 'volts and hertz, or one of them with its unit',
    received: text,
    advice: 'Write for example 120V/60Hz, 230 V 50 Hz, 120V or 60Hz.',
  }),
  'claim.grammar': ({ text, lacks }) => ({
    message: `The claim "${text}" can't be understood.`,
    expected: lackPhrase(lacks),
    received: text,
    advice: `Write for example: ${everyClaimExample.join('; ')}. +- stands for ±.`,
  }),
  // A command to type stays one on the page too.
  'claim.grammar.ofUnit': ({ text }) => ({
    message: `The claim "${text}" is one about a unit over several captures.`,
    expected: `a claim that one capture can show: a wave, ${toldByWords()}`,
    received: text,
    advice: `Take it to bench, which judges it over loads, steps and discharges: sineassay bench 0W=idle.csv 300W=heater.csv --claim "${text.replaceAll('"', '')}"`,
  }),
  'channel.same': ({ channel, others }, option) => ({
    message: `${channel} is the voltage: it can't be the current too.`,
    expected: others.length === 0 ? 'a second channel' : `one of ${others.join(', ')}`,
    received: channel,
    advice:
      others.length === 0
        ? `leave ${option('current')} out: the capture has no channel of a clamp's or shunt's`
        : `name the clamp's or shunt's channel with ${option('current')}`,
  }),
  'load.grammar': ({ text }) => ({
    message: `"${text}" is no load.`,
    expected: 'watts, such as 0, 300 W or 1.2 kW',
    received: text,
    advice: 'Give the power of the load in W or kW.',
  }),
  'option.refused': ({ wanted }) => ({ message: `${wanted} is expected.` }),
  'option.refused.number': () => ({ message: 'A number is expected, with a decimal point.' }),
  'option.refused.large': ({ most }) => ({ message: `A number up to ${most} is expected.` }),
  'option.refused.noScale': () => ({ message: 'A scale of zero leaves nothing to measure.' }),
  'option.refused.skew': () => ({ message: 'NAME=SECONDS is expected, for example CH2=4e-6.' }),
  'option.refused.directInput': () => ({
    message: 'Two channel names are expected, volts first, for example CH3,CH4.',
  }),
};

const LACKS: Readonly<Record<ClaimLack & string, string>> = {
  value: 'a kind of wave, or a value with a range, a bound or a tolerance',
  quantity: `a unit: ${toldByWords('unit')}, or a word: ${toldByWords('word')}`,
  'one unit of ends': 'one unit for both ends',
  'order of ends': 'the smaller end first',
  'one unit of tolerances': 'one unit for both tolerances',
  'unit of value': 'the same unit for value and tolerance, or %',
  'no percent of percent': 'a bound or a range: a percentage of a percentage can be read two ways',
};

function lackPhrase(lacks: ClaimLack): string {
  if (typeof lacks === 'string') return LACKS[lacks];
  return 'toleranceIn' in lacks
    ? `% or ${lacks.toleranceIn} after the tolerance`
    : `${lacks.unit ?? 'no unit'} after the value, not ${lacks.not}`;
}
