import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { type ChannelFigure, type ChannelUnit, figuresIn } from '../../src/measure/figures.ts';
import { readmeWithLists } from '../demonstration/readmeLists.ts';

const keys = (figures: readonly ChannelFigure[]): string[] => figures.map(({ key }) => key);

/** Of `sineassay/measure@1`: programs read them by these names, in this order. More may be added, between them too. */
const published: Readonly<Record<ChannelUnit, readonly string[]>> = {
  V: [
    ...['frequencyHz', 'rmsV', 'meanV', 'peakV', 'troughV', 'maxV', 'minV', 'crestFactor', 'formFactor'],
    ...['thdPercent', 'thdOfRmsPercent', 'thdNoisePercent', 'bandwidthHz', 'deviationFactorPercent'],
    ...['dwellPercent', 'zeroCrossingsPerCycle', 'fundamentalV', 'edgeSlopeVPerUs'],
    ...['acRmsV', 'averageRespondingV'],
  ],
  A: [
    ...['frequencyHz', 'rmsA', 'meanA', 'peakA', 'troughA', 'maxA', 'minA', 'crestFactor', 'formFactor'],
    ...['thdPercent', 'thdOfRmsPercent', 'thdNoisePercent', 'bandwidthHz', 'deviationFactorPercent'],
    ...['dwellPercent', 'zeroCrossingsPerCycle', 'fundamentalA', 'edgeSlopeAPerUs'],
  ],
};

test.each(['V', 'A'] as const)('no key of a document in %s is renamed, moved or gone', (unit) => {
  const own = keys(figuresIn(unit));
  expect(new Set(own).size).toBe(own.length);
  expect(own.filter((key) => published[unit].includes(key))).toEqual(published[unit]);
});

test('each list has its own order: what a person asks about first comes first', () => {
  const first = (list: 'listed' | 'budget' | 'compared'): string[] => keys(figuresIn('V', list)).slice(0, 4);
  expect(first('listed')).toEqual(['rmsV', 'acRmsV', 'averageRespondingV', 'meanV']);
  expect(first('budget')).toEqual(['rmsV', 'frequencyHz', 'crestFactor', 'thdPercent']);
  expect(first('compared')).toEqual(['rmsV', 'frequencyHz', 'crestFactor', 'thdPercent']);
  expect(keys(figuresIn('A', 'listed')).slice(0, 2)).toEqual(['rmsA', 'meanA']);
});

test('no two figures of a list share a rank, a name with its unit, or are left in the unit of neither', () => {
  for (const unit of ['V', 'A'] as const) {
    for (const list of ['listed', 'budget', 'compared'] as const) {
      const own = figuresIn(unit, list);
      expect(new Set(own.map((entry) => entry[list])).size).toBe(own.length);
    }
    const listed = figuresIn(unit, 'listed');
    expect(new Set(listed.map(({ name, unit: own }) => `${name} ${own}`)).size).toBe(listed.length);
    expect(JSON.stringify(figuresIn(unit))).not.toContain('{U}');
  }
});

test('the README lists what the catalogue has', () => {
  const readme = readFileSync('README.md', 'utf8');
  expect(readme, 'npm run demonstration puts it there').toBe(readmeWithLists(readme));
});
