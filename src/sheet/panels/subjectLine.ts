import type { MeasureResult } from '../../verdict/measureDocument.ts';
import { loadText } from '../answer/loadPhrase.ts';
import { significantText } from '../numbers/significantText.ts';
import { withUnit } from '../numbers/withUnit.ts';

/** Label, load, nominal and the first reason, as far as they are known. */
export function subjectLine(result: MeasureResult): string {
  const { label, loadSeen, nominal, waveform } = result;
  const reason = waveform.kind === 'not classified' ? waveform.reasons[1] : waveform.reasons[0];
  const parts = [
    label ?? 'Unit not named',
    ...(loadSeen === undefined
      ? []
      : [loadSeen.watts === 0 ? loadText(loadSeen) : `load ${loadText(loadSeen)}`]),
    nominal === null
      ? 'no nominal voltage'
      : `${withUnit(significantText(nominal.voltageV, 4), 'V')} ${withUnit(significantText(nominal.frequencyHz, 4), 'Hz')} nominal${nominal.inferred ? ' (inferred)' : ''}`,
    ...(reason === undefined ? [] : [reason.replace(/\.$/, '')]),
  ];
  return parts.join(' · ');
}
