import { logClaimExamples } from '../../energy/claims/logClaim.ts';
import type { EnergyErrors } from '../../energy/energyErrors.ts';
import type { ErrorWords } from './wording.ts';

/** Of what a person tells of a log. */
export const energyWords: ErrorWords<EnergyErrors> = {
  'claim.grammar.ofLog': ({ text }) => ({
    message: `The claim "${text}" can't be understood of an energy log.`,
    expected: 'capacity, runtime, charge, efficiency, round trip or power, with a value and its unit',
    received: text,
    advice: `Write for example: ${logClaimExamples.join('; ')}.`,
  }),
  'rating.grammar': ({ text, unit }) => ({
    message: `"${text}" is not what a unit is rated at in ${unit}.`,
    expected: unit === 'Wh' ? 'an energy such as 380Wh or 1.2 kWh' : 'a charge such as 100Ah',
    received: text,
    advice: `Give a number above zero in ${unit}.`,
  }),
  'log.noLoad': () => ({
    message: 'No row of the log tells what flows.',
    expected: 'watts, volts and amperes, or a counter, in at least one row',
    advice: 'name the columns with --power, --volts, --amps or --counter',
  }),
};
