import type { BenchErrors, OtherDocument } from '../../bench/benchErrors.ts';
import type { ErrorWords, Wording } from './wording.ts';

export const benchWords: ErrorWords<BenchErrors> = {
  'claim.grammar.rating': ({ text, example }) => ({
    message: `The claim "${text}" can't be understood.`,
    expected: `a value with its unit, as in "${example}"`,
    received: text,
    advice: `Write for example: ${example}.`,
  }),
  'claim.grammar.efficiency': ({ text, example }) => ({
    message: `The claim "${text}" can't be understood.`,
    expected: `a bound or a range in %, up to 100 %, as in "${example}"`,
    received: text,
    advice: `Write for example: ${example}.`,
  }),
  'battery.grammar': ({ text }) => ({
    message: `"${text}" is no state of a battery.`,
    expected: 'a charge such as 80 %, or volts such as 12.6 V',
    received: text,
  }),
  'energy.grammar': ({ text }) => ({
    message: `"${text}" is no energy.`,
    expected: 'watt-hours above zero, such as 466 or 466 ± 2 %',
    received: text,
  }),
  'earlier.json': () => ({
    message: 'The file is no JSON.',
    expected: 'the bench.json of an earlier bench test',
    advice: EARLIER,
  }),
  'earlier.schema': ({ found }) => ({
    message: 'The file holds no results of a bench test.',
    expected: 'a document of the schema sineassay/bench@1',
    received: documentPhrase(found),
    advice: EARLIER,
  }),
  'document.json': () => noSingleResult('text that is no JSON'),
  'document.schema': ({ found }) => noSingleResult(documentPhrase(found)),
  'document.results': ({ results }) => noSingleResult(`${results} results`),
  'plan.schema.mapping': ({ name, keys, found }) =>
    planWords(found, `This is not ${name}.`, `the keys ${keys.join(', ')}`),
  'plan.schema.key': ({ name, key, keys, found }) =>
    planWords(
      found,
      `The key "${key}" is not known in ${name}.`,
      `the keys ${keys.join(', ')}`,
      'check the spelling',
    ),
  'plan.schema.missing': ({ what, example, found }) =>
    planWords(found, `${what} is missing.`, `a text such as ${example}`),
  'plan.schema.noText': ({ what, example, found }) =>
    planWords(found, `${what} is no text.`, `a text such as ${example}`),
  'plan.schema.factor': ({ what, example, found }) =>
    planWords(found, `${what} is a number other than zero.`, `the ratio of the probe, such as ${example}`),
  'plan.schema.factors': ({ what, example, found }) =>
    planWords(found, `${what} is a factor, or one for each channel.`, `${example}, or CH1: ${example}`),
  'plan.schema.list': ({ name, found }) =>
    planWords(found, `${name} form a list.`, 'lines that start with "- "'),
  'plan.schema.claims': ({ found }) =>
    planWords(found, 'Claims form a list.', 'lines such as - "120 V ±5 %"'),
  'plan.schema.instrument': ({ found }) =>
    planWords(found, 'An instrument is a file or "key: number" lines.', 'gainPercent: 3'),
  'plan.schema.rule': ({ found }) => planWords(found, 'There is no such decision rule.', 'guarded or simple'),
  'plan.schema.resistive': ({ found }) =>
    planWords(found, 'Whether the load is resistive is yes or no.', 'true or false'),
  'plan.schema.direction': ({ found }) =>
    planWords(found, 'There is no such direction.', 'mains to battery or battery to mains'),
  'plan.schema.noUnit': ({ found }) =>
    planWords(found, 'The plan names no unit.', '"units:" and below it a unit with its captures'),
  'plan.schema.twoUnits': ({ name, found }) =>
    planWords(found, `Two units are named "${name}".`, 'a name of its own for each'),
  'plan.schema.noCapture': ({ name, found }) =>
    planWords(
      found,
      `The unit "${name}" has nothing to measure.`,
      '"captures:" and below it a list of files',
    ),
  'plan.schema.noRating': ({ found }) =>
    planWords(found, 'The rated energy is missing.', 'ratedWh, or the claim "capacity 500 Wh"'),
  'plan.schema.noEnergy': ({ found }) => planWords(found, 'No energy was measured.', 'dcWh, acWh or both'),
  'plan.schema.refused': ({ cause, example, found }, _, inWords) => {
    const { message, expected = `a text such as ${example}`, advice } = inWords(cause);
    return planWords(found, message, expected, advice);
  },
};

function planWords(found: string | null, message: string, expected: string, advice?: string): Wording {
  const received = found ?? 'nothing';
  return { message, expected, received, ...(advice === undefined ? {} : { advice }) };
}

const EARLIER = 'Name the file bench.json that an earlier run wrote into its folder of reports';

function noSingleResult(received: string): Wording {
  return {
    message: 'The file holds no single result to compare.',
    expected: 'a document of measure --json with one result',
    received,
    advice: 'Measure one capture with --json, or name the capture or its sheet',
  };
}

function documentPhrase(found: OtherDocument): string {
  if ('place' in found) return `something else than expected at "${found.place}"`;
  return found.schema ?? 'no schema that is known';
}
