import { JSDOM } from 'jsdom';
import { describe, expect, it } from 'vitest';
import { comparisonSvg, drawComparisonSheet } from '../../../src/draw/comparison/drawComparisonSheet.ts';
import { comparisonSentence } from '../../../src/words/bench/comparisonSentence.ts';
import { benches } from '../../fixtures/benches.ts';
import { isOverlap, textBoxes } from '../paper/textBoxes.ts';

const { document, DOMParser } = new JSDOM().window;
const texts = (svg: Element): string[] =>
  [...svg.querySelectorAll('text')].map((text) => text.textContent ?? '');
const drawn = (name: string): string[] => texts(drawComparisonSheet(document, benches[name]!()));

describe.each(Object.entries(benches))('drawComparisonSheet of %s', (_, make) => {
  const svg = drawComparisonSheet(document, make());

  it('keeps every line of text inside the page, none over another', () => {
    const boxes = textBoxes(svg);
    for (const { text, left, right, top, bottom } of boxes) {
      expect.soft(left, text).toBeGreaterThanOrEqual(40);
      expect.soft(right, text).toBeLessThanOrEqual(1560);
      expect.soft(top, text).toBeGreaterThanOrEqual(20);
      expect.soft(bottom, text).toBeLessThanOrEqual(890);
    }
    const overlaps = boxes.flatMap((a, i) =>
      boxes.slice(i + 1).flatMap((b) => (isOverlap(a, b) ? [`“${a.text}” over “${b.text}”`] : [])),
    );
    expect(overlaps).toEqual([]);
  });

  it('is well-formed, self-contained and the same each time', () => {
    const source = comparisonSvg(document, make());
    const parsed = new DOMParser().parseFromString(source, 'image/svg+xml');
    expect(parsed.querySelector('parsererror')).toBeNull();
    const names = new Set([...parsed.querySelectorAll('*')].map((element) => element.localName));
    expect([...names].filter((name) => !shapes.has(name))).toEqual([]);
    expect(parsed.querySelector('svg > title')?.textContent).not.toBe('');
    expect(parsed.querySelector('svg > desc')?.textContent).toContain('not a certificate');
    expect(source).not.toMatch(/url\(|NaN|undefined|Infinity|href/);
    expect(source.replaceAll('\n', '')).not.toMatch(/[\p{Cc}\p{Cf}\p{Cs}]/u);
    expect(comparisonSvg(new JSDOM().window.document, make())).toBe(source);
  });

  it('says what to beware of and what to say', () => {
    const all = texts(svg).join('\n');
    expect(all).toContain('A measurement, not a certificate.');
    expect(all).toContain('Mains voltage can kill.');
    expect(all).toContain('To say on camera');
    // Whole, on however many lines.
    expect(all.replaceAll('\n', ' ')).toContain('One evening’s captures, not a certificate.');
  });
});

const shapes = new Set(['svg', 'title', 'desc', 'g', 'rect', 'path', 'text']);

describe('drawComparisonSheet', () => {
  it('shows the digests of the captures at both ends of each unit’s sweep', () => {
    const digests = drawn('three units').filter((text) => /^[0-9a-f]{64}$/.test(text));
    expect(digests).toEqual([0, 1, 2].flatMap(() => ['00'.repeat(32), '03'.repeat(32)]));
  });

  it('leaves out efficiency where no unit has it, and says where one has not', () => {
    expect(drawn('two units')).not.toContain('Efficiency');
    expect(drawn('three units')).toEqual(expect.arrayContaining(['Efficiency', 'not measured']));
  });

  it('shows six units and says how many more there are', () => {
    expect(drawn('eight units').join()).toMatch(/6 units · 2 more not shown/);
  });

  it('draws no load hollow and full load filled, a pair for voltage and one for THD', () => {
    const dots = [...drawComparisonSheet(document, benches['two units']!()).querySelectorAll('path')].filter(
      (path) => /a5 5/.test(path.getAttribute('d') ?? ''),
    );
    const fills = dots.map((dot) => dot.getAttribute('fill'));
    expect(fills.filter((fill) => fill === '#fdfcf8')).toHaveLength(4);
    expect(fills.filter((fill) => fill === '#16477a')).toHaveLength(4);
  });
});

describe('comparisonSentence', () => {
  it('names the unit that is best by more than the uncertainties', () => {
    const { units } = benches['three units']!();
    const points = units[0]!.points.map((point) => ({ ...point, kind: 'pure sine' as const }));
    // Loaded alike, each with a THD of its own: 2, 3 and 4 %.
    const alike = units.map((unit, i) => ({
      ...unit,
      points: points.map((point) => ({ ...point, thdPercent: { value: 2 + i, uncertainty: 0.1 } })),
    }));
    expect(comparisonSentence(alike)).toMatch(
      /^Inverter A \(invented\) holds its voltage best \(it moves by 2\.30.% with load\) and distorts least at full load \(2\.00.%\)\.$/,
    );
    // The voltage of one rises where the others fall.
    const rising = alike.map((unit, i) =>
      i === 1
        ? { ...unit, regulation: { ...unit.regulation, regulationPercent: { value: -2, uncertainty: 0.1 } } }
        : unit,
    );
    expect(comparisonSentence(rising)).toMatch(/^The units can’t be ranked: not all voltages fall \(/);
  });

  it('ranks nobody where the loads reached or the kinds differ, and says so', () => {
    expect(comparisonSentence(benches['three units']!().units)).toMatch(
      /^The units can’t be ranked: their full loads differ \(.*900.W.*1200.W.*\); their waves differ in kind \(.*pure sine.*modified sine\)\.$/,
    );
  });

  it('names nobody where the difference is within the uncertainties', () => {
    // 2.3 and 2.4 %, ± 0.2 each: 0.1 is under 0.2·√2; the distortions are equal.
    expect(comparisonSentence(benches['units that can’t be told apart']!().units)).toBe(
      'No unit surely holds its voltage best; none surely distorts least at full load.',
    );
  });

  it('says what can’t be compared', () => {
    expect(comparisonSentence(benches['nothing measured']!().units)).toBe(
      'Regulation can’t be compared; distortion at full load can’t be compared.',
    );
    expect(comparisonSentence([])).toBe('No unit was measured.');
  });
});
