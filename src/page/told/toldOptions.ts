import { parseClaim, parseNominal } from '../../entry/grammar.ts';
import { completeOptions, type Instrument, MeasureError, type ToldOptions } from '../../entry/measuring.ts';
import type { Field, Told } from './told.ts';

interface Understood {
  /** What was told, in the terms of the core, without what is wrong. */
  readonly options: ToldOptions;
  /** What is wrong, by field. */
  readonly faults: ReadonlyMap<Field, string>;
}

/**
 * Understands what was told, but for `inverted`: what is measured has a name once the capture has been read.
 */
export function toldOptions(told: Told): Understood {
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
  const scale = tried('scale', told.scale, factor);
  const options = completeOptions({
    claims: told.claims
      .split('\n')
      .map((line) => tried('claims', line, parseClaim))
      .filter((claim) => claim !== undefined),
    scales: scale === undefined ? [] : [{ channel: null, factor: scale }],
    sineThdPercent: tried('sineThdPercent', told.sineThdPercent, positive),
    label: tried('label', told.label, (text) => text),
    load: tried('load', told.load, (text) => text),
    nominal: tried('nominal', told.nominal, parseNominal),
    voltage: tried('voltage', told.voltage, (text) => text),
    current: tried('current', told.current, (text) => text),
    instrument: instrumentOf(told, tried),
    sampleRateHz: tried('sampleRateHz', told.sampleRateHz, positive),
    meter: tried('meterV', told.meterV, (text) => ({ readingV: positive(text), dcCoupled: told.meterDc })),
  });
  return { options, faults };
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

/** A number as people write it; the decimal mark may be a comma, but where it may as well set thousands apart. */
function number(text: string, expected: string, isRight: (value: number) => boolean): number {
  if (/^[-+]?[1-9]\d{0,2},\d{3}$/.test(text)) {
    throw new MeasureError('field.comma', `${text} can be read in two ways.`, {
      advice: `Write ${text.replace(',', '')} or ${text.replace(',', '.')}.`,
    });
  }
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
