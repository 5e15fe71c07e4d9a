import { parseClaim, parseNominal } from '../../entry/grammar.ts';
import { completeOptions, type Instrument, MeasureError, type ToldOptions } from '../../entry/measuring.ts';
import type { Field, Told } from './told.ts';

/** What was told, in the terms of the core, or what is wrong with it, by field. */
export type Understood = { readonly options: ToldOptions } | { readonly faults: ReadonlyMap<Field, string> };

/**
 * Understands what was told.
 *
 * @param measured - name of the channel that is measured unless another is told; inversion is of it.
 */
export function toldOptions(told: Told, measured: string): Understood {
  const faults = new Map<Field, string>();
  const tried = <T>(field: Field, text: string, parse: (text: string) => T): T | undefined => {
    if (text.trim() === '') return undefined;
    try {
      return parse(text.trim());
    } catch (problem) {
      if (!(problem instanceof MeasureError)) throw problem;
      faults.set(field, `${problem.message} ${problem.detail.advice ?? ''}`.trim());
      return undefined;
    }
  };
  const voltage = tried('voltage', told.voltage, (text) => text);
  const scale = tried('scale', told.scale, factor);
  const options = completeOptions({
    claims: told.claims
      .split('\n')
      .map((line) => tried('claims', line, parseClaim))
      .filter((claim) => claim !== undefined),
    scales: scale === undefined ? [] : [{ channel: null, factor: scale }],
    inverted: told.inverted ? [voltage ?? measured] : [],
    sineThdPercent: tried('sineThdPercent', told.sineThdPercent, positive),
    label: tried('label', told.label, (text) => text),
    load: tried('load', told.load, (text) => text),
    nominal: tried('nominal', told.nominal, parseNominal),
    voltage,
    current: tried('current', told.current, (text) => text),
    instrument: instrumentOf(told, tried),
    sampleRateHz: tried('sampleRateHz', told.sampleRateHz, positive),
    meter: tried('meterV', told.meterV, (text) => ({ readingV: positive(text), dcCoupled: told.meterDc })),
  });
  return faults.size > 0 ? { faults } : { options };
}

/** Half-widths of zero are sure; the others are of something that there is. */
const mayBeZero: ReadonlySet<keyof Instrument> = new Set([
  'gainPercent',
  'offsetV',
  'probePercent',
  'timeBasePpm',
  'distortionPercent',
  'meterPercent',
]);

function instrumentOf(
  { instrument }: Told,
  tried: <T>(field: Field, text: string, parse: (text: string) => T) => T | undefined,
): Partial<Instrument> | undefined {
  const told = (Object.entries(instrument) as [keyof Instrument, string][]).flatMap(([key, text]) => {
    const parse = key === 'bits' ? bits : mayBeZero.has(key) ? notNegative : positive;
    const value = tried(key, text, parse);
    return value === undefined ? [] : [[key, value] as const];
  });
  return told.length === 0 ? undefined : Object.fromEntries(told);
}

/** A number as people write it; the decimal mark may be a comma. */
function number(text: string, expected: string, isRight: (value: number) => boolean): number {
  const value = Number(text.replace(/(?<=\d),(?=\d+$)/, '.'));
  if (Number.isFinite(value) && isRight(value)) return value;
  throw new MeasureError('field.number', `${expected} is expected.`);
}

const positive = (text: string): number => number(text, 'A number above zero', (value) => value > 0);
const notNegative = (text: string): number => number(text, 'A number, zero or more', (value) => value >= 0);
const factor = (text: string): number => number(text, 'A number other than zero', (value) => value !== 0);
const bits = (text: string): number =>
  number(
    text,
    'A whole number from 1 to 24',
    (value) => Number.isInteger(value) && value >= 1 && value <= 24,
  );
