import { JSDOM } from 'jsdom';
import { describe, expect, test } from 'vitest';
import { compareCaptures } from '../../../src/bench/compare/compareCaptures.ts';
import { drawOverlaySheet, overlayWave, waveDifference } from '../../../src/draw/overlay/drawOverlaySheet.ts';
import { svgText } from '../../../src/draw/paper/writeText.ts';
import { compareLines, compareSentence } from '../../../src/words/compareLines.ts';
import { worded } from '../../../src/words/worded.ts';
import { assays } from '../../fixtures/assays.ts';
import { itIsASheet } from '../itIsASheet.ts';

const names = Object.keys(assays);
const [first, second] = names as [string, string];
const { document } = new JSDOM().window;
const compared = (a: string, b: string) =>
  worded(compareCaptures({ ...assays[a]!(), budgets: null }, { ...assays[b]!(), budgets: null }));

test('waves of two frequencies lie over each other by their cycles, and their difference is taken there', () => {
  const trace = (frequencyHz: number, amplitude: number, count: number) => {
    const timeS = Float64Array.from({ length: count }, (_, i) => (2 * i) / (count - 1) / frequencyHz);
    const wave = timeS.map((t) => amplitude * Math.sin(2 * Math.PI * frequencyHz * t));
    return { timeS, wave, ideal: wave, residual: wave, unit: 'V' as const };
  };
  const a = overlayWave(trace(50, 300, 1001), 50);
  const b = overlayWave(trace(60, 310, 777), 60);
  const difference = waveDifference(a, b);
  // 10 sin; straight lines between 777 points miss a sine of 310 by less than 310 (2π · 2/776)² / 8.
  const most = (310 * ((4 * Math.PI) / 776) ** 2) / 8;
  difference.forEach((value, i) => {
    expect(Math.abs(value - 10 * Math.sin(2 * Math.PI * a.cycles[i]!))).toBeLessThan(most + 1e-9);
  });
});

describe.each(names)('%s against the first', (name) => {
  const both = (page: Document) =>
    drawOverlaySheet(page, [assays[first]!(), assays[name]!()], compared(first, name));
  itIsASheet(both(document), (page) => svgText(both(page)));

  test('draws every text inside the page, and names both captures', () => {
    const [a, b] = [assays[first]!(), assays[name]!()];
    const svg = drawOverlaySheet(document, [a, b], compared(first, name));
    const texts = [...svg.querySelectorAll('text')].map(({ textContent }) => textContent ?? '');
    expect(texts.filter((text) => text === a.result.sha256 || text === b.result.sha256)).toHaveLength(2);
    expect(texts.join(' ')).toContain('ground clip is earth');
    expect(svg.querySelector('title')?.textContent).toMatch(/^What differs\? /);
  });
});

test('the sentence says kinds first, then what differs, then what can’t be told apart', () => {
  const modified = names.find((name) => assays[name]!().result.waveform.kind === 'modified sine')!;
  const pure = names.find((name) => assays[name]!().result.waveform.kind === 'pure sine')!;
  const sentence = compareSentence(compared(pure, modified)).replaceAll('\u00a0', ' ');
  expect(sentence).toMatch(/^A is a pure sine, B a modified sine; B has more distortion, [\d.]+ % against /);
  const same = compareSentence(compared(pure, pure));
  expect(same).toMatch(/can’t be told apart\.$/);
  expect(same).not.toContain('B has');
});

test('for the terminal: both names, a table with a verdict a figure, and the same capture is said', () => {
  const lines = compareLines(compared(second, second), { width: 100, all: false });
  expect(lines[0]).toMatch(/^A /);
  expect(lines[1]).toMatch(/^B /);
  expect(lines.some((line) => line.includes('RMS voltage') && line.includes('not told apart'))).toBe(true);
  expect(lines.join(' ')).toContain('Both are the same capture');
});
