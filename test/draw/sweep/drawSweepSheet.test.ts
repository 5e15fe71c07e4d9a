import { JSDOM } from 'jsdom';
import { describe, expect, it } from 'vitest';
import type { BenchUnit } from '../../../src/bench/benchDocument.ts';
import { palette } from '../../../src/draw/paper/palette.ts';
import { drawSweepSheet, sweepSvg } from '../../../src/draw/sweep/drawSweepSheet.ts';
import { benchUnit, benchUnits } from '../../fixtures/benchUnits.ts';
import { itIsASheet, texts } from '../itIsASheet.ts';

const { document } = new JSDOM().window;
const drawn = (name: string): string[] => texts(drawSweepSheet(document, benchUnits[name]!()));

describe.each(Object.entries(benchUnits))('drawSweepSheet of %s', (_, make) => {
  const svg = drawSweepSheet(document, make());

  itIsASheet(svg, (page) => sweepSvg(page, make()));

  it('says what to beware of, what to say, and how to check it', () => {
    const all = texts(svg).join('\n');
    expect(all).toContain('To say on camera');
    for (const { sha256 } of make().points.slice(0, 12)) expect(all).toContain(sha256);
  });
});

describe('drawSweepSheet', () => {
  it('names the kind of wave once for each run of loads', () => {
    expect(drawn('usual').filter((text) => text === 'pure sine')).toHaveLength(2);
    expect(drawn('usual').filter((text) => text === 'distorted sine')).toHaveLength(2);
  });

  it('draws the claimed range, the claimed THD and a reference limit, each by name', () => {
    expect(drawn('usual')).toEqual(
      expect.arrayContaining([
        'claimed 126\u00a0V',
        'claimed 114\u00a0V',
        'claimed 3\u00a0%',
        'nominal 120\u00a0V',
      ]),
    );
    // The lowest public THD limit that fits 120 V 60 Hz is 8 %, in IEC 62040-3 and IEEE 519 alike.
    expect(drawn('usual').some((text) => /^IE.* 8\u00a0%$/.test(text))).toBe(true);
  });

  it('crosses a load under which the output was lost, names it, and keeps it out of the line', () => {
    const unit = benchUnit([0, 300, 600, 900]);
    const last = unit.points.at(-1)!;
    const lost = { ...unit, points: [...unit.points.slice(0, -1), { ...last, lost: 'output lost' }] };
    const pathsOf = (of: BenchUnit): string[] =>
      [...drawSweepSheet(document, of).querySelectorAll('path')].map((path) => path.getAttribute('d') ?? '');
    const crosses = pathsOf(lost).filter((d) => /l13\.5 13\.5m0 -13\.5l-13\.5 13\.5$/.test(d));
    // One each for voltage, THD and crest factor.
    expect(crosses).toHaveLength(3);
    const corners = (d: string): number => (/^M[\d. L]+$/.test(d) ? d.split('L').length : 0);
    expect(Math.max(...pathsOf(unit).map(corners))).toBe(4);
    expect(Math.max(...pathsOf(lost).map(corners))).toBe(3);
    const said = texts(drawSweepSheet(document, lost));
    expect(said).toContain('output lost');
    expect(said.join('\n')).toContain('cross: the output was lost');
    expect(texts(drawSweepSheet(document, unit)).join('\n')).not.toContain('cross: the output was lost');
  });

  it('marks points outside a limit by shape as well as by ink, and those above the rated load as hollow', () => {
    const svg = drawSweepSheet(document, benchUnits.usual!());
    const squares = [...svg.querySelectorAll('path')].filter((path) =>
      /h9v9h-9z$/.test(path.getAttribute('d') ?? ''),
    );
    // THD at 1200 W and 1500 W is over the claimed 3 %; 1500 W is above the rated 1200 W.
    expect(squares.map((path) => path.getAttribute('fill'))).toEqual([palette.outside, palette.paper]);
  });

  it('marks a mere bound with a triangle that points down from it, without a bar', () => {
    const unit = benchUnit([0, 600, 1200]);
    const bound = { value: 0.06, uncertainty: 0.25, notAbove: 0.3811 };
    const points = unit.points.map((point, i) => (i === 1 ? { ...point, thdPercent: bound } : point));
    const drawing = drawSweepSheet(document, { ...unit, points });
    const paths = (svg: Element): string[] =>
      [...svg.querySelectorAll('path')].map((path) => path.getAttribute('d') ?? '');
    const triangles = paths(drawing).filter((d) => /h9l-4\.5 9z$/.test(d));
    expect(triangles).toHaveLength(1);
    expect(texts(drawing)).toContain('under 0.39');
    // One bar less than where each is a value.
    const bars = (svg: Element): number => paths(svg).filter((d) => /^M[\d.]+ [\d.]+V/.test(d)).length;
    expect(bars(drawing)).toBe(bars(drawSweepSheet(document, unit)) - 1);
  });

  it('shows how many captures its list leaves out', () => {
    expect(drawn('thirty points')).toContain('name and SHA-256 of each; 18 more in the bench document');
  });

  it('says that a load was not reached or not known', () => {
    expect(drawn('two points')).toContain('not in this sweep');
    expect(drawn('nothing known')).toContain('No capture has a known load.');
  });

  it('reads the spoken sentence with its units in words', () => {
    const all = drawn('usual').join(' ');
    expect(all).toMatch(
      /from nothing to 1200 watts its voltage falls by 5\.0 percent, and 2 of 3 claims fail\./,
    );
  });

  it('says that invented data are invented, and only then', () => {
    const mark = 'Demonstration data: invented, no real unit';
    const said = {
      code: 'data.invented',
      message: 'The file says that its data are invented, for demonstration.',
    };
    expect(texts(drawSweepSheet(document, benchUnit([0, 300], { notices: [said] })))).toContain(mark);
    const named = benchUnit([0, 300], { label: 'Inverter B (invented)' });
    expect(texts(drawSweepSheet(document, named))).not.toContain(mark);
  });
});
