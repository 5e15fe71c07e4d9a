import { expect, test } from 'vitest';
import type { EventResult } from '../../src/assay/stepsDocument.ts';
import type { Worded } from '../../src/base/notice.ts';
import { eventWords } from '../../src/words/eventWords.ts';

const plain = (text: string): string => text.replaceAll('\u00a0', ' ');
const of = (value: number, uncertainty = 0.0003): { value: number; uncertainty: number } => ({
  value,
  uncertainty,
});
const unknown = { value: null, reason: 'the record ends first' } as const;
const phraseOf = (event: Worded<EventResult>): string => plain(eventWords(event).phrase);

const cutOff = { kind: 'cut-off', startS: of(0.389525, 0.00004) } as const;
const transfer = {
  kind: 'transfer',
  startS: of(0.2101, 0.0003),
  endS: of(0.2243, 0.0001),
  durationS: of(0.01423),
  phaseJumpDeg: of(-35.2, 2),
  residualV: of(4, 1),
  returnPeakV: of(330, 9),
} as const;
const brownOut = {
  kind: 'brown-out',
  startS: of(0.39),
  endS: unknown,
  durationS: of(0.4203, 0.01),
  beforeV: of(119.8, 4),
  lowestV: of(61.24, 2),
} as const;

test('a cut-off is an output lost, since the load came on or at a moment, and never told why', () => {
  expect(phraseOf({ ...cutOff, loadW: 1498.2, heldS: of(0.1395) })).toBe(
    'output lost 0.14 s after 1500 W came on',
  );
  expect(phraseOf({ ...cutOff, loadW: 1500, heldS: of(0.3895), heldAtLeast: true })).toBe(
    'output lost at 0.39 s, after at least 0.39 s at 1500 W',
  );
  expect(phraseOf({ ...cutOff, heldS: of(0.0142) })).toBe('output lost 14 ms after the load came on');
  expect(phraseOf({ ...cutOff, loadW: 0.1, heldS: of(0.2) })).toBe(
    'output lost 0.2 s after the load went off',
  );
  expect(phraseOf({ ...cutOff, loadW: 3000, heldS: of(0.0011, 0.01) })).toBe('output lost as 3000 W came on');
  expect(phraseOf({ ...cutOff, heldS: of(0.2), isAfterLess: true })).toBe(
    'output lost 0.2 s after the load went off',
  );
  expect(phraseOf({ ...cutOff, loadW: 300, heldS: of(0.2), isAfterLess: true })).toBe(
    'output lost 0.2 s after the load went down to 300 W',
  );
  expect(phraseOf({ ...cutOff, loadW: 300 })).toBe('output lost at 0.39 s, at 300 W');
  expect(phraseOf(cutOff)).toBe('output lost at 0.39 s');
  expect(phraseOf({ ...cutOff, startS: of(12.3456) })).toBe('output lost at 12.35 s');
  expect(plain(eventWords(cutOff).sentence)).toBe('Output lost at 0.38953 ± 0.00004 s.');
});

test('a hiccup never settles, a failed start does not start, a brown-out falls', () => {
  const hiccup = { kind: 'hiccup', startS: of(0.1), count: 5, periodS: of(0.8), onS: of(0.06) } as const;
  expect(phraseOf(hiccup)).toBe('voltage never settles: 5 losses, every 0.8 s');
  expect(phraseOf({ ...hiccup, periodS: unknown, onS: unknown, loadW: 1500 })).toBe(
    'voltage never settles: 5 losses, at 1500 W',
  );
  expect(phraseOf({ ...hiccup, loadW: 904, heldS: of(0.038) })).toBe(
    'voltage never settles: 5 losses, every 0.8 s, the first 38 ms after 904 W came on',
  );
  expect(phraseOf({ kind: 'failed start', startS: of(0.1), endS: of(0.1241), returnPeakV: of(160, 5) })).toBe(
    'output does not start: on for 24 ms and gone again',
  );
  expect(phraseOf({ ...brownOut, loadW: 1500, heldS: of(0.14) })).toBe(
    'brown-out: voltage fell from 120 V to 61.2 V for at least 0.42 s, 0.14 s after 1500 W came on',
  );
  expect(phraseOf({ ...brownOut, endS: of(0.81) })).toBe(
    'brown-out: voltage fell from 120 V to 61.2 V for 0.42 s',
  );
});

test('a transfer is told in milliseconds, an outage in seconds, each with its doubt and its phase', () => {
  expect(phraseOf(transfer)).toBe('output away for 14.2 ms');
  expect(plain(eventWords(transfer).clause)).toBe(
    'output away for 14.2 ms, give or take 0.3, and came back 35° behind',
  );
  expect(plain(eventWords(transfer).sentence)).toBe(
    'Transfer at 0.2101 ± 0.0003 s: no voltage for 14.2 ± 0.3 ms, and came back 35° behind.',
  );
  const outage = { ...transfer, kind: 'outage', durationS: of(0.341, 0.0004) } as const;
  expect(phraseOf(outage)).toBe('output away for 0.341 s');
  expect(plain(eventWords({ ...outage, phaseJumpDeg: of(0.4, 2) }).clause)).toBe(
    'output away for 0.341 s, and came back in step',
  );
});

test('a start, bursts and an inrush', () => {
  expect(phraseOf({ kind: 'start-up', startS: of(0.1234), returnPeakV: of(300, 9) })).toBe(
    'output starts at 0.12 s',
  );
  const bursts = {
    kind: 'idle bursts',
    startS: of(0),
    bursts: 6,
    burstS: of(0.02),
    intervalS: of(1),
  } as const;
  expect(phraseOf(bursts)).toBe('output only in bursts: 6 of 20 ms, every 1 s');
  expect(phraseOf({ ...bursts, burstS: unknown, intervalS: unknown })).toBe('output only in bursts: 6');
  const inrush = { kind: 'inrush', atS: of(0.25), peakA: of(23.4, 0.8), halfCycleA: [9, 4] } as const;
  expect(phraseOf({ ...inrush, clipped: true })).toBe('load on at 0.25 s with an inrush of at least 23.4 A');
  expect(plain(eventWords({ ...inrush, clipped: false }).sentence)).toBe(
    'Inrush at 0.2500 ± 0.0003 s: peak 23.4 ± 0.8 A.',
  );
});
