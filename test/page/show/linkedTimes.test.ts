import { expect, test } from 'vitest';
import type { MeasureResult } from '../../../src/assay/measureDocument.ts';
import { linkedTimes } from '../../../src/page/show/answerTexts.ts';
import { html } from '../../../src/publish/html/html.ts';

const result = { capture: { startS: -0.2, durationS: 0.6 } } as MeasureResult;
const linked = (text: string): string => linkedTimes(html`${text}`, result).text;
const times = (text: string): number[] =>
  [...linked(text).matchAll(/data-at="([^"]+)"/g)].map(([, at]) => Number(at));

test('times that a sentence names are links that know them in seconds', () => {
  expect(linked('A step at 0.205 ± 0.001 s.')).toBe(
    'A step at <a class="time" href="#wave-part" data-at="0.205">0.205 ± 0.001 s</a>.',
  );
  expect(times('Steady from −50.0 ms to 49.9 ms.')).toEqual([-0.05, 0.0499]);
  expect(times('Until 300 µs; at -0.1\u00a0s')).toEqual([300e-6, -0.1]);
});

test('durations, other units and times outside of the record are none', () => {
  for (const text of [
    'lasts 20 ms',
    'at 0.7 s',
    'from −3 s on',
    'at 0.1 s/div',
    'at 120 V',
    'a rate at 5 ms² ',
    'format 3 s',
  ]) {
    expect(times(text)).toEqual([]);
  }
});

test('text within marks is left alone, and what is escaped stays so', () => {
  const text = linkedTimes(html`<p title="at 0.1 s">at 0.1 s ${'<b>at 0.2 s</b>'}</p>`, result).text;
  expect(text).toBe(
    '<p title="at 0.1 s">at <a class="time" href="#wave-part" data-at="0.1">0.1 s</a> &lt;b&gt;at <a class="time" href="#wave-part" data-at="0.2">0.2 s</a>&lt;/b&gt;</p>',
  );
});
