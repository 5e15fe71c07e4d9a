import { JSDOM } from 'jsdom';
import { describe, expect, it } from 'vitest';
import { drawSheet, sheetSvg } from '../../src/draw/drawSheet.ts';
import { palette } from '../../src/draw/paper/palette.ts';
import { assays } from '../fixtures/assays.ts';
import { itIsASheet, texts } from './itIsASheet.ts';

const { document } = new JSDOM().window;

describe.each(Object.entries(assays))('drawSheet of %s', (_, assay) => {
  const svg = drawSheet(document, assay());

  itIsASheet(svg, (page) => sheetSvg(page, assay()));

  it('says what it is, how to check it and what to beware of', () => {
    const all = texts(svg).join('\n');
    expect(all).toContain('A measurement, not a certificate.');
    expect(all).toContain(`SHA-256 ${assay().result.sha256}`);
    expect(all).toMatch(/Mains voltage can kill.*Local codes and licensed practice come first\./);
  });
});

/** Under three cycles of a record the two that are shown begin before its first rising zero. */
const early = (): ReturnType<(typeof assays)[string]> => {
  const assay = assays.goodSine!();
  const { trace } = assay;
  return { ...assay, trace: { ...trace, timeS: trace.timeS.map((t) => t - 0.4 / 60) } };
};

describe('drawSheet of a wave that begins before its rising zero', () => {
  itIsASheet(drawSheet(document, early()), (page) => sheetSvg(page, early()));

  it('shows all of it', () => {
    expect(texts(drawSheet(document, early()))).toContain('Two cycles');
  });
});

describe('drawSheet', () => {
  const drawn = (name: string): string[] => texts(drawSheet(document, assays[name]!()));

  it('says that invented data is invented, and only then', () => {
    const mark = 'Demonstration data: invented, no real unit';
    const assay = assays.goodSine!();
    const said = {
      code: 'data.invented',
      message: 'The file says that its data are invented, for demonstration.',
    };
    const saying = { ...assay, result: { ...assay.result, notices: [said] } };
    expect(texts(drawSheet(document, saying))).toContain(mark);
    // Its label says "(invented)": a name says nothing of its data.
    expect(assay.result.label).toContain('invented');
    expect(drawn('goodSine')).not.toContain(mark);
  });

  it('shows the figures in the unit of what was measured', () => {
    expect(drawn('goodSine')).toEqual(expect.arrayContaining(['RMS voltage', '120\u00a0V', '±\u00a04']));
    expect(drawn('current')).toEqual(expect.arrayContaining(['RMS current', '0.84\u00a0A']));
  });

  it('says what a meter that is not true-RMS shows where that is off by over 1 %', () => {
    expect(drawn('square')).toContain('A meter that is not true-RMS shows');
    expect(drawn('goodSine')).not.toContain('A meter that is not true-RMS shows');
  });

  it('names missing figures, harmonics and limits instead of drawing them', () => {
    expect(drawn('noise').filter((text) => text === 'not measurable')).toHaveLength(4);
    expect(drawn('noise')).toContain('none: they need a period');
    expect(drawn('noise')).toContain('None applies: the limits need a nominal voltage and frequency.');
    expect(drawn('noise')).not.toContain('Residual');
  });

  it('draws a bar for each order above the first and a tick for each limit, outside bars in an ink of their own', () => {
    const svg = drawSheet(document, assays.goodSine!());
    const bars = [...svg.querySelectorAll('g rect')];
    expect(bars).toHaveLength(49);
    // Only the fifteenth harmonic, 1.1 V of 169 V, is over its limit of 0.4 % (IEC 61000-2-2, Table 1).
    expect(bars.filter((bar) => bar.getAttribute('fill') === palette.outside)).toHaveLength(1);
  });

  it('shows the six worst findings, each quantity once', () => {
    const rows = drawn('modifiedSine').filter((text) => /^(Harmonic \d+|THD.*|RMS voltage): /.test(text));
    expect(rows).toHaveLength(6);
    expect(new Set(rows.map((row) => row.split(':')[0])).size).toBe(6);
  });

  it('marks a limit that is known from memory', () => {
    const assay = assays.goodSine!();
    const [finding] = assay.result.findings.filter(({ provenance }) => provenance === 'memory');
    const svg = drawSheet(document, { ...assay, result: { ...assay.result, findings: [finding!] } });
    expect(texts(svg)).toContain('inside, for information');
    expect(texts(svg).some((text) => text.startsWith('Limit from memory at most 10\u00a0%, inside by'))).toBe(
      true,
    );
  });

  it('shows the name of the capture and not the folders it lay in', () => {
    for (const file of ['/reviews/of-mine/kettle.csv', 'C:\\me\\kettle.csv', 'kettle.csv']) {
      const assay = assays.goodSine!();
      const source = sheetSvg(document, { ...assay, result: { ...assay.result, file } });
      expect(source).toContain('>Capture: kettle.csv<');
      expect(source).not.toMatch(/reviews|C:/);
    }
  });

  it('shows markup, escape sequences and direction marks from a capture as inert text', () => {
    const source = sheetSvg(document, assays.hostile!());
    expect(source).not.toContain('<script');
    expect(source).not.toContain('<img');
    expect(source.replaceAll('\n', '')).not.toMatch(/[\p{Cc}\p{Cf}\p{Cs}]/u);
    expect(drawn('hostile').join()).toContain('"><script>alert(1)</script>\ufffdgnp.\ufffd\ufffd[31m');
  });
});
