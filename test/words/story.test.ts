import { describe, expect, test } from 'vitest';
import type { MeasureResult } from '../../src/assay/measureDocument.ts';
import type { Worded } from '../../src/base/notice.ts';
import { cardDoubt, cardFigures, cardSentence, cardSubject } from '../../src/draw/card/drawCard.ts';
import type { ClaimResult } from '../../src/judge/claims/claim.ts';
import { answerLines } from '../../src/words/answerLines.ts';
import {
  answerSentence,
  questionSentence,
  spokenLines,
  titleSentence,
} from '../../src/words/answerSentence.ts';
import { changeSentence } from '../../src/words/courseWords.ts';
import { storyOf } from '../../src/words/story.ts';
import { storyWords } from '../../src/words/storyWords.ts';
import { stories } from '../fixtures/stories.ts';

const plain = (text: string): string => text.replaceAll('\u00a0', ' ');
const sineHolds: Worded<ClaimResult> = {
  ...{ text: 'pure sine', quantity: 'waveform', value: 'pure sine', limit: null },
  ...{ outcome: 'pass', probability: 1 },
};
const slow: Worded<ClaimResult> = {
  ...{ text: 'transfer < 10 ms', quantity: 'transferS', value: 0.01423, limit: { max: 0.01 } },
  ...{ outcome: 'fail', probability: 0 },
};
const withClaims = (result: MeasureResult, ...claims: Worded<ClaimResult>[]): MeasureResult => ({
  ...result,
  claims,
});

describe('what the story of a result is', () => {
  const { trip, transfer, step, start, steady } = stories;

  test('a lost output before a transfer, that before a step, that before how the record begins', () => {
    const events = [...start.events, ...transfer.events, ...trip.events];
    const all = { ...step, events };
    expect(storyOf(all)).toMatchObject({ kind: 'event', event: { kind: 'cut-off' } });
    expect(storyOf({ ...all, events: events.slice(0, 2) })).toMatchObject({ event: { kind: 'transfer' } });
    expect(storyOf({ ...all, events: start.events })).toMatchObject({ kind: 'step' });
    expect(storyOf(start)).toMatchObject({ event: { kind: 'start-up' } });
    expect(storyOf(steady)).toBeNull();
  });

  test('of several steps the farthest, of several transfers the longest', () => {
    const [small] = step.steps;
    const large = { ...small!, extremeV: { value: 101, uncertainty: 3 } };
    expect(storyOf({ ...step, steps: [small!, large] })).toMatchObject({
      step: { extremeV: { value: 101 } },
    });
    const [long] = transfer.events;
    const short = { ...(long as typeof long & object), durationS: { value: 0.008, uncertainty: 0.0003 } };
    const two = { ...transfer, events: [short, long] } as MeasureResult;
    expect(storyOf(two)).toMatchObject({ event: { durationS: { value: 0.01423 } } });
    expect(storyWords(two)?.brief).toContain('the longest of 2');
  });
});

describe('a unit that shuts off under a load', () => {
  const result = withClaims(stories.trip, sineHolds);

  test('leads with that, and says of the claim that it held before', () => {
    expect(plain(answerSentence(result))).toBe(
      'Output lost 0.14 s after 1500 W came on; before that, “pure sine” holds: a pure sine, 2.1 % distortion, give or take 0.4.',
    );
    expect(titleSentence(result)).toBe(answerSentence(result));
    expect(plain(answerLines(result)[1]!)).toMatch(
      /^ {2}Output lost 0\.14 s after 1500 W came on; before that,/,
    );
    expect(answerLines(result).join(' ')).not.toMatch(/\bYes\b/);
  });

  test('is said so on camera and on the card, never as a pure sine alone', () => {
    expect(plain(spokenLines(result)[0])).toBe(
      'Output lost 0.14 s after 1500 W came on; before that, “pure sine” holds: a sine, 2.1 % distortion, give or take 0.4.',
    );
    expect(plain(cardSentence(result))).toBe('Output lost 0.14 s after 1500 W came on.');
    expect(cardSubject(result)).toContain('Before that: “pure sine” holds');
    expect(cardFigures(result).map(({ name, unit }) => [name, unit])).toEqual([
      ['held, then lost', 's'],
      ['RMS voltage before the loss', 'V'],
      ['distortion before the loss', '%'],
    ]);
  });
});

describe('a transfer slower than claimed', () => {
  const result = withClaims(stories.transfer, slow, sineHolds);

  test('leads headline, line to say and card, in the claim’s own unit and by its text', () => {
    expect(plain(answerSentence(result))).toBe(
      'Output away for 14.2 ms, give or take 0.3, and came back 35° behind: “transfer < 10 ms” fails; before that at 300 W (as told), “pure sine” holds: a pure sine, 2.1 % distortion, give or take 0.4.',
    );
    expect(plain(spokenLines(result)[0])).toMatch(/^Output away for 14\.2 ms: “transfer < 10 ms” fails; /);
    expect(plain(cardSentence(result))).toBe('Output away for 14.2 ms: “transfer < 10 ms” fails.');
    expect(plain(changeSentence(result))).toMatch(/behind: “transfer < 10 ms” fails\.$/);
  });

  test('a claim in seconds is answered in seconds beside the milliseconds', () => {
    const inSeconds = { ...slow, text: 'transfer < 0.01 s' };
    expect(plain(changeSentence(withClaims(stories.transfer, inSeconds)))).toContain(
      '“transfer < 0.01 s” fails (0.014 s)',
    );
  });
});

test('a load step is told before the wave’s kind', () => {
  expect(plain(answerSentence(stories.step))).toBe(
    'When the load came on, the voltage fell by 8.4 %, give or take 0.6, and settled 3.0 % lower than before within 0.22 s; after that at 600 W measured, a pure sine, 2.1 % distortion, give or take 0.4.',
  );
  expect(plain(cardSentence(stories.step))).toBe('When the load came on, the voltage fell by 8.4 %.');
  expect(questionSentence(stories.step)).toBe('Does the voltage hold when the load changes?');
});

test('a settling that can’t be told from none has no time, and a far stretch is not told as the one just before', () => {
  const [step] = stories.step.steps;
  const atOnce = { ...step!, recoveryS: { value: 0.004, uncertainty: 0.008 } };
  expect(plain(answerSentence({ ...stories.step, steps: [atOnce] }))).toMatch(
    /and settled 3\.0 % lower than before; after that at 600 W measured/,
  );
  // On at 0.3 s, off at 0.4 s, measured from 0 to 0.25 s.
  const on = { ...step!, atS: { value: 0.3, uncertainty: 0.01 }, extremeV: { value: 113, uncertainty: 4 } };
  const off = { ...step!, direction: 'off' as const };
  const { steady } = stories;
  const voltage = { ...steady.voltage!, spanS: [0, 0.25] as const };
  expect(plain(answerSentence({ ...steady, voltage, steps: [on, off] }))).toMatch(
    /^When the load went off, .*, the largest of 2 steps; earlier in the record, a pure sine/,
  );
});

test('a brown-out, a hiccup and a start lead too', () => {
  expect(plain(spokenLines(stories.brownOut)[0])).toMatch(
    /^Brown-out: voltage fell from 120 V to 61\.2 V for 0\.42 s, 0\.14 s after 1500 W came on; before that, a sine/,
  );
  expect(plain(answerSentence(stories.hiccup))).toMatch(
    /^Voltage never settles: 5 losses, every 0\.8 s; while it was on, a pure sine/,
  );
  expect(plain(answerSentence(stories.start))).toMatch(
    /^Output starts at 0\.12 s; from then on, a pure sine/,
  );
});

test('a verdict on a small part of the record says so in its first sentence', () => {
  const { steady } = stories;
  const voltage = { ...steady.voltage!, spanS: [0.1, 0.107] as const };
  const capture = { ...steady.capture, startS: 0, durationS: 0.164 };
  expect(plain(answerSentence({ ...steady, voltage, capture }))).toMatch(/ \(judged on 7 of 164 ms\)\.$/);
  const half = { ...steady.voltage!, spanS: [0, 0.083] as const };
  expect(answerSentence({ ...steady, voltage: half, capture })).not.toContain('judged on');
});

test('a card carries the doubt that may make its numbers wrong, and counts the others', () => {
  const scale = { code: 'scale.suspect', message: 'Mains at 1.2 V: set the probe’s ratio.' };
  const few = { code: 'cycles.few', message: 'Few cycles.' };
  expect(cardDoubt([few, scale])).toEqual({
    message: scale.message,
    more: '1 more doubt in the page and the JSON',
  });
  expect(cardDoubt([few])).toBeNull();
});
