import { decimalExponent } from '../../base/elementary/decimalExponent.ts';
import { powerOfTen } from '../../base/elementary/powerOfTen.ts';
import { quotedCell } from './quotedCell.ts';
import { rowsOf } from './rowsOf.ts';
import { timeCells } from './timeCells.ts';
import { valueCells } from './valueCells.ts';
import type { WrittenCapture } from './writtenCapture.ts';

/** Comma, lines of key and value first (interval, start, vertical settings), then names, then time in s. */
export function preambleText(capture: WrittenCapture): string[] {
  const { channels, startS, intervalS, comment } = capture;
  const perChannel = (key: string, value: (samples: Float64Array, unit: string) => string): string =>
    [key, ...channels.map(({ samples, unit }) => value(samples, unit))].join(',');
  return [
    ...(comment === undefined ? [] : [`Remark,${quotedCell(comment)}`]),
    `Record length,${channels[0].samples.length}`,
    `Sample interval,${intervalS.toExponential(9)}`,
    'Horizontal unit,s',
    `Horizontal start,${startS.toExponential(9)}`,
    perChannel('Vertical unit', (_, unit) => unit),
    perChannel('Vertical scale', (samples) => String(scalePerDivision(samples))),
    perChannel('Vertical position', () => '0'),
    '',
    ['Time', ...channels.map(({ name }) => name)].join(','),
    ...rowsOf([timeCells(capture, 1), ...valueCells(capture)], ','),
  ];
}

/** The 1, 2 or 5 times a power of ten at which the values fit into four divisions each way. */
function scalePerDivision(samples: Float64Array): number {
  const least = samples.reduce((most, value) => Math.max(most, Math.abs(value)), 0) / 4;
  if (least === 0) return 1;
  const power = powerOfTen(decimalExponent(least));
  return ([1, 2, 5].find((factor) => factor * power >= least) ?? 10) * power;
}
