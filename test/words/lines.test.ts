import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { MeasureResult } from '../../src/assay/measureDocument.ts';
import type { Worded } from '../../src/base/notice.ts';
import type { ClaimResult } from '../../src/judge/claims/claim.ts';
import type { Finding } from '../../src/judge/limits/findings.ts';
import { allLines } from '../../src/words/allLines.ts';
import { answerLines } from '../../src/words/answerLines.ts';
import { answerSentence } from '../../src/words/answerSentence.ts';
import { claimsVerdict, worstClaims } from '../../src/words/claimWords.ts';
import { breakLines } from '../../src/words/courseWords.ts';
import { limitLines, worstFindings } from '../../src/words/limitWords.ts';
import { failureLine, isGrave, rankNotices } from '../../src/words/rankNotices.ts';
import { alignColumns, shortText } from '../../src/words/text.ts';
import { assays } from '../fixtures/assays.ts';

const inert = /[\p{Cc}\p{Cf}\p{Cs}]/u;

describe.each(Object.entries(assays))('answerLines of %s', (name, assay) => {
  const { result } = assay();
  const lines = answerLines(result, { sheetPath: `reports/${name}.svg` });
  const joined = lines.map((line) => line.trim()).join(' ');

  it('has lines of at most 80 characters, none of them empty', () => {
    for (const line of lines) {
      expect([...line].length, line).toBeLessThanOrEqual(80);
      expect(line.trim()).not.toBe('');
    }
  });

  it('says the same answer as the sheet, the path, and that it is no certificate', () => {
    const answer = answerSentence(result).replaceAll('\u00a0', ' ');
    expect(joined).toContain(answer);
    expect(lines).toContain(`  Sheet: reports/${name}.svg`);
    expect(joined.endsWith('One capture, not a certificate.')).toBe(true);
  });

  it('shows the four figures', () => {
    for (const word of ['RMS', 'frequency', 'crest factor', 'THD']) expect(joined).toContain(word);
  });

  it('holds no control, format or surrogate character, nor does everything', () => {
    for (const line of [...lines, ...allLines(result)]) expect(line).not.toMatch(inert);
  });
});

describe('answerLines', () => {
  it('leaves the sheet’s line out where none was written', () => {
    expect(answerLines(assays.goodSine!().result).join()).not.toContain('Sheet:');
  });

  it('cuts neither advice nor doubt nor claim, in any width', () => {
    const doubts = Array.from({ length: 12 }, (_, i) => ({
      code: `other.${i}`,
      message: `Doubt number ${i} is as long as doubts are: it names what was seen, and then what to set on the scope.`,
    }));
    const claims = Array.from({ length: 6 }, (_, i) => ({
      ...{ text: `crest 1.3${i}..1.45`, quantity: 'crestFactor', value: null, limit: null },
      ...{ outcome: 'not judged', probability: null, reason: 'nothing repeats: save three cycles or more' },
    })) satisfies MeasureResult['claims'];
    fc.assert(
      fc.property(
        fc.integer({ min: 40, max: 200 }),
        fc.constantFrom(...Object.keys(assays)),
        (width, name) => {
          const { result } = assays[name]!();
          const told = answerLines({ ...result, notices: doubts, claims }, { width })
            .slice(1)
            .map((line) => line.trim())
            .join(' ');
          // Names of hundreds of characters may be.
          if (name !== 'hostile' && name !== 'long') expect(told).not.toContain('…');
          for (const { message } of doubts) expect(told).toContain(message);
          for (const { text } of claims) expect(told).toContain(text);
        },
      ),
      { numRuns: 40 },
    );
  });

  it('says what to doubt, worst first', () => {
    const lines = answerLines(assays.modifiedSine!().result).join(' ');
    expect(lines).toContain('Doubt: Only 2.4 cycles were recorded: set 5 ms/div or slower');
  });
});

describe('allLines', () => {
  it('prints every figure, harmonic, finding, claim and notice', () => {
    const { result } = assays.flatTop!();
    const lines = allLines(result);
    const harmonics = lines.slice(lines.indexOf('Voltage harmonics') + 2, lines.indexOf('Claims') - 1);
    expect(harmonics).toHaveLength(50);
    expect(lines.filter((line) => line.includes('EN 50160:2010, 4.2.5')).length).toBeGreaterThanOrEqual(25);
    for (const { text } of result.claims) expect(lines.join('\n')).toContain(`  ${text} `);
    for (const { code } of result.notices) expect(lines.join('\n')).toContain(`  ${code} `);
    expect(lines).toContain(`  SHA-256 ${result.sha256}`);
  });

  it('gives the reason for a figure that is missing', () => {
    expect(allLines(assays.noise!().result).join('\n')).toMatch(
      /frequency +not measurable: no period was found/,
    );
  });
});

describe('failureLine', () => {
  it('says where, what, expected, found and what to do in one line', () => {
    expect(
      failureLine({
        file: 'kettle.csv',
        error: {
          code: 'cell.number',
          message: 'a cell is no number',
          line: 12,
          column: 3,
          expected: 'a voltage',
          received: '“abc”',
          advice: 'save the waveform as CSV',
        },
      }),
    ).toBe(
      'kettle.csv, line 12, column 3: a cell is no number; expected a voltage, found “abc”. Save the waveform as CSV.',
    );
  });

  it('does with a message alone, and stays one inert line', () => {
    const line = failureLine({
      file: 'a\nb\u001b[2J.csv',
      error: { code: 'file.empty', message: 'It is empty.' },
    });
    expect(line).toBe('a\ufffdb\ufffd[2J.csv: It is empty.');
  });
});

describe('worstFindings', () => {
  const row = (quantity: string, changes: Partial<Finding>): Finding => ({
    standard: 'S',
    edition: '1',
    clause: '',
    quantity,
    value: 1,
    limit: { max: 10 },
    margin: 1,
    outcome: 'pass',
    side: 'inside',
    provenance: 'public',
    ...changes,
  });

  it('puts failures first, whole-wave figures before harmonics, then doubts, then the nearest; memory behind public', () => {
    const findings = [
      row('memory inside', { outcome: 'information', provenance: 'memory' }),
      row('far inside', { margin: 9 }),
      row('near inside of a large limit', { limit: { max: 250 }, margin: 5 }),
      row('probably holds', { outcome: 'conditional pass' }),
      row('memory outside', { outcome: 'information', side: 'outside', provenance: 'memory', margin: -90 }),
      row('fails a little', { outcome: 'fail', side: 'outside', margin: -1 }),
      row('probably fails', { outcome: 'conditional fail', side: 'outside', margin: -0.1 }),
      row('harmonic 21 (% of fundamental)', { outcome: 'fail', side: 'outside', margin: -80 }),
      row('fails by far', { outcome: 'fail', side: 'outside', margin: -40 }),
    ];
    expect(worstFindings(findings).map(({ quantity }) => quantity)).toEqual([
      'fails by far',
      'fails a little',
      'harmonic 21 (% of fundamental)',
      'probably fails',
      'memory outside',
      'probably holds',
      'near inside of a large limit',
      'far inside',
      'memory inside',
    ]);
  });

  it('leads with what a reader would quote: THD, voltage, frequency, before a tiny harmonic with a doubt of its own', () => {
    const findings = [
      row('harmonic 39 (% of fundamental)', {
        limit: { max: 0.2 },
        margin: 0.19,
        outcome: 'conditional pass',
      }),
      row('frequency (Hz)', { limit: { min: 59.5, max: 60.5 }, margin: 0.49 }),
      row('RMS voltage (V) of the network', {
        limit: { min: 114 },
        margin: -1,
        side: 'outside',
        outcome: 'fail',
        elsewhere: true,
      }),
      row('RMS voltage (V)', { limit: { min: 108, max: 126 }, margin: 5 }),
      row('THD to order 40 (% of fundamental)', { limit: { max: 8 }, margin: 7.6 }),
      row('harmonic 5 (% of fundamental)', { limit: { max: 6 }, margin: 1 }),
    ];
    expect(worstFindings(findings).map(({ quantity }) => quantity)).toEqual([
      'THD to order 40 (% of fundamental)',
      'RMS voltage (V)',
      'frequency (Hz)',
      'harmonic 5 (% of fundamental)',
      'harmonic 39 (% of fundamental)',
      'RMS voltage (V) of the network',
    ]);
  });
});

describe('claimsVerdict', () => {
  it('takes the worst outcome and every claim that shares it; a claim that can’t be judged is no pass', () => {
    const of = (outcome: Worded<ClaimResult>['outcome'], text: string): Worded<ClaimResult> => ({
      text,
      quantity: 'rmsV',
      value: 1,
      limit: null,
      outcome,
      probability: null,
    });
    const claims = [
      of('pass', 'a'),
      of('not judged', 'b'),
      of('conditional pass', 'c'),
      of('not judged', 'd'),
    ];
    const verdict = claimsVerdict(claims);
    expect(verdict?.outcome).toBe('not judged');
    expect(verdict?.claims.map(({ text }) => text)).toEqual(['b', 'd']);
    expect(worstClaims(claims).map(({ text }) => text)).toEqual(['b', 'd', 'c', 'a']);
    expect(claimsVerdict([])).toBeNull();
  });
});

describe('rankNotices', () => {
  it('calls grave what may make every figure wrong', () => {
    const isGraveCode = (code: string): boolean => isGrave({ code, message: '' });
    expect(['scale.half', 'dc.large', 'wave.clipped', 'channels.larger'].map(isGraveCode)).toEqual([
      true,
      true,
      true,
      true,
    ]);
    expect(['cycles.few', 'channels.others', 'data.invented', 'load.differs'].map(isGraveCode)).toEqual([
      false,
      false,
      false,
      false,
    ]);
  });

  it('puts a suspicious scale before few cycles, and unknown topics last in their order', () => {
    const codes = [
      'other.b',
      'other.a',
      'nominal.other',
      'value.outlier',
      'cycles.few',
      'dc.large',
      'scale.suspect',
    ];
    const ranked = rankNotices(codes.map((code) => ({ code, message: code }))).map(({ code }) => code);
    expect(ranked).toEqual([
      'scale.suspect',
      'dc.large',
      'value.outlier',
      'cycles.few',
      'nominal.other',
      'other.b',
      'other.a',
    ]);
  });
});

describe('breakLines', () => {
  it('breaks at blanks, leads and indents, and cuts nothing', () => {
    const breaks = { width: 12, lead: '- ', indent: '  ' };
    expect(breakLines('one two three four', breaks)).toEqual(['- one two', '  three four']);
    expect(breakLines('seventy-seven thousand', breaks)).toEqual(['- seventy-seven', '  thousand']);
    expect(breakLines('120\u00a0V and 5', breaks)).toEqual(['- 120\u00a0V and', '  5']);
  });
});

describe('shortText and alignColumns', () => {
  it('cut at either end', () => {
    expect(shortText('reports/kettle.svg', 11, 'start')).toBe('…kettle.svg');
    expect(shortText('reports', 4)).toBe('rep…');
    expect(shortText('reports', 7)).toBe('reports');
  });

  it('stand in columns', () => {
    expect(
      alignColumns([
        ['a', 'bb', 'c'],
        ['aaa', 'b'],
      ]),
    ).toEqual(['a    bb  c', 'aaa  b']);
    expect(
      alignColumns(
        [
          ['1', '10'],
          ['100', '1'],
        ],
        'right',
      ),
    ).toEqual(['  1  10', '100   1']);
  });
});

describe('limitLines', () => {
  it('lists rows with clause and provenance, and harmonics of one limit together', () => {
    expect(
      limitLines([
        {
          standard: 'Example standard',
          edition: '2020',
          subject: 'examples',
          appliesTo: { voltageV: 230, frequencyHz: 50 },
          rows: [
            {
              clause: '1',
              quantity: 'RMS voltage',
              unit: 'V',
              limit: { min: 207, max: 253 },
              provenance: 'public',
              remark: 'a moment',
            },
          ],
          harmonics: {
            clause: '2',
            unit: '% of fundamental',
            provenance: 'memory',
            remark: 'a moment',
            limitPercent: new Map([
              [4, 1],
              [2, 2],
              [3, 2],
            ]),
          },
        },
      ]),
    ).toEqual([
      'Example standard:2020, limits for examples (230 V 50 Hz)',
      '  RMS voltage  207 to 253 V  1  from a public page  a moment',
      '  harmonics, % of fundamental, 2, from memory; a moment:',
      '    2 to 3: 2, 4: 1',
      '',
    ]);
  });
});
