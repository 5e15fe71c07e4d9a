import type { MeasureResult } from '../../verdict/measureDocument.ts';
import { significantText } from '../numbers/significantText.ts';
import { alignColumns } from './alignColumns.ts';
import { terminalText } from './terminalText.ts';

/** Each window of 10 or 12 cycles: when it starts, its fundamental, and the three distortions of IEC 61000-4-7. */
export function windowLines({ voltage, current }: MeasureResult): readonly string[] {
  const unit = voltage === undefined ? 'A' : 'V';
  const groups = voltage?.harmonicGroups ?? current?.harmonicGroups;
  if (groups === undefined) {
    return ['', 'Windows: none, the record is shorter than 10 cycles (12 at 60 Hz).'];
  }
  const rows = (groups.perWindow ?? []).map((window) => {
    const fundamental = 'fundamentalRmsV' in window ? window.fundamentalRmsV : window.fundamentalRmsA;
    return [
      `${significantText(window.startS, 6)} s`,
      `${significantText(fundamental, 6)} ${unit}`,
      ...[window.thdPercent, window.thdGroupsPercent, window.thdSubgroupsPercent].map(
        (x) => `${significantText(x, 4)} %`,
      ),
    ];
  });
  return [
    '',
    `Windows: ${groups.extent}`,
    ...alignColumns([['start', 'fundamental', 'THD', 'THDG', 'THDS'], ...rows], 'right').map(
      (line) => `  ${line}`,
    ),
  ].map(terminalText);
}
