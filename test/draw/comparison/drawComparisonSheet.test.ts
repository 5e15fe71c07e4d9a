import { JSDOM } from 'jsdom';
import { describe, expect, it } from 'vitest';
import { comparisonSvg, drawComparisonSheet } from '../../../src/draw/comparison/drawComparisonSheet.ts';
import { comparisonSentence } from '../../../src/words/bench/comparisonSentence.ts';
import { benches } from '../../fixtures/benches.ts';
import { itIsASheet, texts } from '../itIsASheet.ts';

const { document } = new JSDOM().window;
const drawn = (name: string): string[] => texts(drawComparisonSheet(document, benches[name]!()));

describe.each(Object.entries(benches))('drawComparisonSheet of %s', (_, make) => {
  const svg = drawComparisonSheet(document, make());

  itIsASheet(svg, (page) => comparisonSvg(page, make()));

  it('says what to beware of and what to say', () => {
    const all = texts(svg).join('\n');
    expect(all).toContain('To say on camera');
    // Whole, on however many lines.
    expect(all.replaceAll('\n', ' ')).toContain('One evening’s captures, not a certificate.');
  });
});

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
