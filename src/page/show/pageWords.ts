import { allFields } from '../told/fields.ts';
import type { Field } from '../told/told.ts';

/** The fields by the words that the core, which speaks to the command line too, knows them by. */
const fieldOf: Readonly<Record<string, Field>> = {
  nominal: 'nominal',
  'sample-rate': 'sampleRateHz',
  scale: 'scale',
  voltage: 'voltage',
  current: 'current',
  meter: 'meterV',
  'meter-dc': 'meterDc',
  invert: 'inverted',
  load: 'load',
  label: 'label',
  claim: 'claims',
  'sine-thd': 'sineThdPercent',
};

/** A sentence of the core with the page's own fields in place of a command's options: “Nominal” for --nominal. */
export function pageWords(text: string): string {
  return text.replace(/--([a-z]+(?:-[a-z]+)*)/g, (option, name: string) => {
    const field = fieldOf[name];
    const label = allFields.find((one) => one.name === field)?.label;
    return label === undefined ? `${option} of the command line` : `“${label}”`;
  });
}
