import type { Errors } from '../../../src/words/errors/errorWords.ts';

/** For each problem that there is, facts as they may come: enough of them that each of its sentences is said. */
export const examples: { readonly [Problem in keyof Errors]: readonly Errors[Problem][] } = {
  'file.empty': [{}],
  'file.empty.blank': [{ bytes: 5 }],
  'file.foreign': [
    { kind: 'png' },
    { kind: 'jpeg' },
    { kind: 'gif' },
    { kind: 'tiff' },
    { kind: 'bmp' },
    { kind: 'pdf' },
    { kind: 'zip' },
    { kind: 'empty zip' },
    { kind: 'gzip' },
    { kind: 'office document' },
    { kind: 'web page' },
    { kind: 'xml' },
  ],
  'file.binary': [{ controlShare: 0.314 }],
  'file.spectrum': [{ axis: 'freq' }, { axis: null }],
  'rows.none': [{ last: 'Dear reader,' }, { last: '' }],
  'rows.few': [
    { rows: 3, least: 16 },
    { rows: 1, least: 16 },
  ],
  'rows.malformed': [{ malformed: 4, rows: 200, found: '"x#,y"' }],
  'columns.many': [{ columns: 2000, most: 1000 }],
  'yaml.syntax': [
    { found: { library: 'Missing closing "quote' } },
    { found: { is: 'several documents' } },
    { found: { is: 'reference mark' } },
    { found: { is: 'deep' } },
    { found: { is: 'many references' } },
    { found: { is: 'unknown reference', written: '*new*' } },
    { found: { is: 'reference to itself', written: '*a' } },
    { found: { is: 'long', characters: 4_100_000 } },
  ],
  'time.none': [
    { isNumbered: false, textColumn: null },
    { isNumbered: true, textColumn: null },
    { isNumbered: true, textColumn: 'Time (s)' },
  ],
  'time.absurd.interval': [{ intervalS: 1e-308, shortestS: 1e-15, longestS: 1e6 }],
  'time.absurd.start': [{ startS: 1e25, latestS: 1e12 }],
  'time.still': [{ stamp: 0.001 }, { stamp: null }],
  'time.still.coarse': [{ stamps: 3, rows: 200 }],
  'time.backwards': [{ before: 0.0198, after: 0.0196 }],
  'time.uneven': [{ channel: 'Outlet' }],
  'values.none': [{}],
  'channels.none': [{}],
  'channels.none.measurable': [
    {
      channels: [
        { name: 'P', unit: 'W' },
        { name: 'Raw', unit: '' },
      ],
    },
  ],
  'channels.disagree': [
    { channel: 'CH2', differences: [{ of: 'intervalS', values: [2e-5, 2.0006e-5] }] },
    {
      channel: 'CH2',
      differences: [
        { of: 'sampleCount', values: [1000, 999] },
        { of: 'startS', values: [-0.02, -0.019994] },
      ],
    },
  ],
  'channel.unknown': [{ wanted: 'CH7', channels: ['CH1', 'CH2'] }],
  'channel.unmeasurable': [
    { channel: 'P', unit: 'W' },
    { channel: 'Raw', unit: '' },
  ],
  'channel.unmeasurable.current': [{ channel: 'P', unit: 'W' }],
  'channel.difference': [{ names: ['CH1', 'Load'], quantities: ['voltage', 'current'] }],
  'scale.absurd': [{ factor: 1e308, least: 1e-12, most: 1e12 }],
  'plan.schema.refused': [
    {
      cause: { problem: 'rows.few', facts: { rows: 1, least: 16 }, place: {} },
      example: '80 %',
      found: '"much"',
    },
  ],
};
