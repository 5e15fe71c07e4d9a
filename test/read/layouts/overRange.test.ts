import { describe, expect, test } from 'vitest';
import { assayCapture } from '../../../src/assay/assayCapture.ts';
import type { MeasureResult } from '../../../src/assay/measureDocument.ts';
import { parseClaim } from '../../../src/judge/claims/parseClaim.ts';
import { readCapture } from '../../../src/read/readCapture.ts';
import { rescaleCapture } from '../../../src/read/rescaleCapture.ts';
import { worded } from '../../../src/words/worded.ts';
import { readsBothWays } from '../chunks/bothWays.ts';
import { bytesOf } from './layoutCase.ts';
import { lines, rows } from './wave.ts';

/** 170 V, 60 Hz, 8.3 cycles at 20 kS/s, on a grid of 2 V: the rails stand at ±120 V. */
const RAIL = 120;
const COUNT = 2767;
const wave = (i: number): number => 2 * Math.round(85 * Math.sin((2 * Math.PI * 60 * i) / 20_000 + 0.4)) + 0;
const V = rows(COUNT).map(wave);
const railed = V.map((v) => Math.max(-RAIL, Math.min(RAIL, v)));
const isOver = (v: number): boolean => Math.abs(v) > RAIL;
const written = (mark: (v: number, i: number) => string): Uint8Array =>
  bytesOf(
    lines([
      'Time (s),Outlet (V)',
      ...V.map((v, i) => `${(i * 5e-5).toFixed(5)},${isOver(v) ? mark(v, i) : v}`),
    ]),
  );

describe.each([
  ['∞', '-∞'],
  ['inf', '-inf'],
  ['Infinity', '\u2212Infinity'],
  ['OL', '-OL'],
  ['OL', 'OL'],
  ['overflow', 'overflow'],
  ['9.9E37', '-9.9E37'],
  ['9.9E37', '9.9E37'],
  ['3.402823E+38', '-3.402823E+38'],
])('cells "%s" and "%s" beside values at the rail', (high, low) => {
  const bytes = written((v) => (v > 0 ? high : low));

  test('are samples that were cut off there, not gaps', async () => {
    const capture = readCapture(bytes);
    for (const chunk of [100, 5000]) await readsBothWays(bytes, {}, { end: 150, chunk });
    const [channel] = capture.channels;
    expect(Array.from(channel.samples)).toEqual(railed);
    expect(channel.gaps).toEqual([]);
    expect(channel.overRange).toEqual({ sampleCount: V.filter(isOver).length, top: RAIL, bottom: -RAIL });
    expect(capture.notices).toEqual([
      expect.objectContaining({ code: 'wave.overRange', unit: 'V', samples: COUNT, ends: [RAIL, -RAIL] }),
    ]);
  });

  test('never lead to the advice to be more sensitive', () => {
    const assay = assayCapture(readCapture(bytes), { file: 'a.csv', sha256: '0'.repeat(64) })[0]!;
    const { notices } = worded(assay.result);
    const said = notices.map(({ code, message }) => `${code}: ${message}`).join('\n');
    expect(said).toContain('wave.overRange');
    expect(said).not.toMatch(/fewer|digitiser\.range|resolution\.coarse|gaps\.found/);
  });
});

test('what is cut off is of no kind, and no claim of its shape or volts can be judged', () => {
  const claims = ['pure sine', '120 V ±5 %', 'THD < 5 %', 'crest 1.38..1.45', '60 Hz ±1 %', '50 V ±5 %'];
  const resultOf = (bytes: Uint8Array): MeasureResult =>
    worded(
      assayCapture(
        readCapture(bytes),
        { file: 'a.csv', sha256: '0'.repeat(64) },
        { claims: claims.map(parseClaim) },
      )[0]!.result,
    );
  const cut = resultOf(written((v) => (v > 0 ? '∞' : '-∞')));
  expect(cut.waveform).toMatchObject({ kind: 'not classified', atTheEdge: false });
  const percent = Math.round((100 * V.filter(isOver).length) / COUNT);
  const [reason] = cut.waveform.reasons;
  expect(reason).toContain(`the scope cut it off, ${percent} % of its samples lie beyond the range`);
  expect(cut.claims.map(({ outcome }) => outcome)).toEqual([
    ...['not judged', 'not judged', 'not judged', 'not judged'],
    // Where it crosses zero nothing was cut off, and what was only adds to volts that are too many.
    ...['pass', 'fail'],
  ]);
  expect(cut.claims[1]).toMatchObject({ reason });
  expect(cut.findings).toEqual([]);
  expect(cut.notices.map(({ code }) => code)).not.toContain('nominal.off');
});

test('a mark here and there on the tops leaves the wave what it is', () => {
  const isMarked = (v: number, i: number): boolean => v === 170 && i % 10 === 0;
  const bytes = bytesOf(
    lines([
      'Time (s),Outlet (V)',
      ...V.map((v, i) => `${(i * 5e-5).toFixed(5)},${isMarked(v, i) ? '∞' : v}`),
    ]),
  );
  const capture = readCapture(bytes);
  expect(capture.channels[0].overRange?.sampleCount).toBe(V.filter(isMarked).length);
  const { waveform } = assayCapture(capture, { file: 'a.csv', sha256: '0'.repeat(64) })[0]!.result;
  expect(waveform.kind).toBe('pure sine');
});

test('a probe ratio moves the rails, an inversion turns them', () => {
  const bytes = written((v) => (v > 0 ? 'OL' : '9.9E37'));
  const { channels } = rescaleCapture(readCapture(bytes), {
    scales: [{ channel: null, factor: 10 }],
    inverted: ['Outlet'],
    measured: undefined,
  });
  expect(channels[0].overRange).toMatchObject({ top: 10 * RAIL, bottom: -10 * RAIL });
});

test('the same marks on the flanks are missing values', async () => {
  // Every twentieth sample between −60 and 60 V, where no rail is near.
  const isMarked = (v: number, i: number): boolean => Math.abs(v) < 60 && i % 20 === 7;
  const bytes = bytesOf(
    lines([
      'Time (s),Outlet (V)',
      ...V.map((v, i) => `${(i * 5e-5).toFixed(5)},${isMarked(v, i) ? 'inf' : v}`),
    ]),
  );
  const capture = readCapture(bytes);
  for (const chunk of [100, 5000]) await readsBothWays(bytes, {}, { end: 150, chunk });
  expect(capture.channels[0].overRange).toBeUndefined();
  expect(capture.notices.map(({ code }) => code)).toEqual(['gaps.found']);
  capture.channels[0].samples.forEach((sample, i) => {
    if (isMarked(V[i]!, i)) expect(sample).toBeNaN();
    else expect(sample).toBe(V[i]);
  });
});

test('9.91E37 is not a number, and stays a gap also at the rail', () => {
  const capture = readCapture(written(() => '9.91E37'));
  expect(capture.channels[0].overRange).toBeUndefined();
  expect(capture.notices.map(({ code }) => code)).toEqual(['gaps.found']);
});
