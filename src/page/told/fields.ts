import type { Field } from './told.ts';

/** A field of the form: what it is called and what to write into it. */
export interface FieldText {
  readonly name: Field;
  readonly label: string;
  /** Below it: an example, or what is assumed without it. */
  readonly hint: string;
  readonly kind: 'text' | 'number' | 'lines' | 'check' | 'channel';
  /** Words that browsers offer while one types. */
  readonly offers?: readonly string[];
}

/** What a person usually knows. */
export const mainFields: readonly FieldText[] = [
  { name: 'label', label: 'Unit under test', hint: 'Inverter A (red case)', kind: 'text' },
  { name: 'load', label: 'Load on it', hint: '300 W resistive', kind: 'text' },
  {
    name: 'nominal',
    label: 'Nominal',
    hint: '120V/60Hz; without it, the nearest',
    kind: 'text',
    offers: ['120V/60Hz', '230V/50Hz', '240V/60Hz', '100V/50Hz', '100V/60Hz'],
  },
  {
    name: 'claims',
    label: 'What the box claims, one a line',
    hint: 'pure sine · 120 V ±5 % · 60 Hz ±0.5 Hz · THD < 3 % · crest 1.38..1.45 · transfer < 20 ms',
    kind: 'lines',
  },
  { name: 'voltage', label: 'Channel', hint: 'the first voltage unless chosen', kind: 'channel' },
  {
    name: 'scale',
    label: 'Probe or divider ratio',
    hint: 'what the file’s values are multiplied by',
    kind: 'number',
  },
  { name: 'inverted', label: 'Upside down', hint: '', kind: 'check' },
  { name: 'current', label: 'Current', hint: 'the one that goes with the voltage', kind: 'channel' },
  { name: 'meterV', label: 'Meter reading, V', hint: 'of a multimeter, at the same time', kind: 'number' },
  { name: 'meterDc', label: 'That meter counts DC in', hint: '', kind: 'check' },
];

/** What is known of the instrument, and what is rarely asked. */
export const moreFields: readonly FieldText[] = [
  { name: 'gainPercent', label: 'Scope gain, ± %', hint: 'assumed 3', kind: 'number' },
  { name: 'probePercent', label: 'Probe ratio, ± %', hint: 'assumed 2', kind: 'number' },
  { name: 'offsetV', label: 'Scope offset, ± V', hint: 'assumed 1 % of the range', kind: 'number' },
  { name: 'bits', label: 'Vertical bits', hint: 'as the record shows', kind: 'number' },
  { name: 'timeBasePpm', label: 'Time base, ± ppm', hint: 'assumed 50', kind: 'number' },
  { name: 'distortionPercent', label: 'Scope’s own distortion, %', hint: 'assumed 0.3', kind: 'number' },
  { name: 'bandwidthHz', label: 'Bandwidth of scope and probe, Hz', hint: 'taken as ample', kind: 'number' },
  { name: 'meterPercent', label: 'Meter, ± %', hint: 'assumed 1', kind: 'number' },
  { name: 'meterBandwidthHz', label: 'Bandwidth of the meter, Hz', hint: 'not known', kind: 'number' },
  { name: 'sampleRateHz', label: 'Samples a second', hint: 'for a file without a time', kind: 'number' },
  { name: 'sineThdPercent', label: 'A sine up to a THD of, %', hint: '5 (common practice)', kind: 'number' },
];

export const allFields: readonly FieldText[] = [...mainFields, ...moreFields];
