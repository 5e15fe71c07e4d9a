import { JSDOM } from 'jsdom';
import { describe, expect, test } from 'vitest';
import type { MeasureResult } from '../../../src/assay/measureDocument.ts';
import { cardFigures, cardSentence, cardSubject, drawCard } from '../../../src/draw/card/drawCard.ts';
import { darkPalette } from '../../../src/draw/paper/palette.ts';
import { assays } from '../../fixtures/assays.ts';
import { stories } from '../../fixtures/stories.ts';
import { waveAssay } from '../../fixtures/waveAssay.ts';
import { linesOutside, overlaps } from '../itIsASheet.ts';
import { textBoxes } from '../paper/textBoxes.ts';

const { document } = new JSDOM().window;
const named = (kind: MeasureResult['waveform']['kind'], levels = 0, atTheEdge = false): string => {
  const { result } = Object.values(assays)[0]!();
  return cardSentence({ ...result, waveform: { kind, levels, atTheEdge, reasons: [] } });
};

test('the message is the kind of wave, and what it is not', () => {
  expect(named('modified sine', 3)).toBe('This is a modified sine, not a sine.');
  expect(named('pure sine', 0, true)).toBe('This is a pure sine, at the edge.');
  expect(named('stepped', 9)).toBe('This is a stepped wave of 9 levels.');
  expect(named('not classified')).toBe('This wave can’t be classified.');
});

test('the subject names unit, load and the claim that decides', () => {
  const { result } = Object.values(assays)[0]!();
  const claim = { text: 'pure sine', quantity: 'waveform', value: 'modified sine', limit: null };
  const claims = [{ ...claim, outcome: 'fail', probability: 0 }] as const;
  const subject = cardSubject({ ...result, label: 'Inverter B', claims });
  expect(subject.replaceAll('\u00a0', ' ')).toBe('Inverter B · 300 W resistive, as told · “pure sine” fails');
});

describe.each(Object.entries(assays))('the card of %s', (_, make) => {
  test.each(['light', 'dark'] as const)(
    '%s: 1920 by 1080, every figure once, the digest, the cautions',
    (theme) => {
      const { result } = make();
      const svg = drawCard(document, make(), theme);
      expect([svg.getAttribute('width'), svg.getAttribute('height')]).toEqual(['1920', '1080']);
      const texts = [...svg.querySelectorAll('text')].map(({ textContent }) => textContent ?? '');
      for (const { name } of cardFigures(result))
        expect(texts.filter((text) => text === name)).toHaveLength(1);
      expect(texts.join(' ')).toContain(result.sha256.slice(0, 16));
      expect(texts).toContain('One capture, not a certificate.');
      expect(texts.join(' ')).toContain('ground clip is earth');
      if (theme === 'dark') expect(svg.querySelector('rect')!.getAttribute('fill')).toBe(darkPalette.paper);
    },
  );
});

describe.each(Object.entries(stories))('the card of a record with a story: %s', (name, result) => {
  test('leads with it, in title and in large letters, inside the page and none over another', () => {
    const notices = [
      { code: 'scale.half', message: 'Half of a nominal: one leg of a floating outlet? Measure both.' },
    ];
    const svg = drawCard(document, { ...waveAssay(Math.sin), result: { ...result, notices } }, 'light');
    const message = cardSentence(result);
    expect(svg.querySelector('title')?.textContent).toBe(message);
    expect(svg.querySelector('desc')?.textContent?.startsWith(message)).toBe(true);
    const texts = [...svg.querySelectorAll('text')].map(({ textContent }) => textContent ?? '');
    expect(texts.join(' ')).toContain(message);
    expect(texts.join(' ')).toContain(
      'Doubt: Half of a nominal: one leg of a floating outlet? Measure both.',
    );
    if (name !== 'steady') expect(texts.join(' ')).not.toMatch(/This is a pure sine/);
    const boxes = textBoxes(svg);
    for (const { right, text } of boxes) expect(right, text).toBeLessThanOrEqual(1560);
    expect(overlaps(svg)).toEqual([]);
  });
});

test('a wave that begins before its rising zero stays on the card', () => {
  const assay = waveAssay((turn) => 170 * Math.sin(2 * Math.PI * turn));
  const { trace } = assay;
  const early = { ...assay, trace: { ...trace, timeS: trace.timeS.map((t) => t - 0.4 / 60) } };
  const svg = drawCard(document, early, 'light');
  const [, , width, height] = svg.getAttribute('viewBox')!.split(' ').map(Number) as [
    number,
    number,
    number,
    number,
  ];
  expect(linesOutside(svg, { left: 40, right: width - 40, top: 0, bottom: height })).toEqual([]);
});
