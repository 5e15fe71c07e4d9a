import { describe, expect, it } from 'vitest';
import type { LoadSeen } from '../../src/assay/loadSeen.ts';
import type { MeasureResult } from '../../src/assay/measureDocument.ts';
import type { Worded } from '../../src/base/notice.ts';
import type { ClaimResult } from '../../src/judge/claims/claim.ts';
import type { Finding } from '../../src/judge/limits/findings.ts';
import type { WaveformKind } from '../../src/judge/waveform/kinds.ts';
import { answerSentence, questionSentence, spokenLines } from '../../src/words/answerSentence.ts';
import { claimsSentence, outcomeWords } from '../../src/words/claimWords.ts';
import { averageMeterPhrase, distortionPhrase } from '../../src/words/kindPhrase.ts';
import { findingSentence } from '../../src/words/limitWords.ts';
import { loadPhrase, powerSentence } from '../../src/words/loadPhrase.ts';
import { assays } from '../fixtures/assays.ts';

/** A sentence with plain blanks, so that expectations stay readable. */
const plain = (text: string): string => text.replaceAll('\u00a0', ' ');

const good = assays.goodSine!().result;

function resultOf(kind: WaveformKind, changes: Partial<MeasureResult> = {}): MeasureResult {
  return {
    ...good,
    claims: [],
    waveform: { kind, reasons: ['no two cycles are alike'], levels: 9, atTheEdge: false },
    voltage: {
      ...good.voltage!,
      thdPercent: { value: 2.13, uncertainty: 0.41 },
      dwellPercent: { value: 24.6, uncertainty: 0.3 },
    },
    ...changes,
  };
}

function claim(
  outcome: Worded<ClaimResult>['outcome'],
  changes: Partial<Worded<ClaimResult>> = {},
): Worded<ClaimResult> {
  return {
    text: 'THD < 3 %',
    quantity: 'thdPercent',
    value: 5.21,
    limit: { max: 3 },
    outcome,
    probability: 0.5,
    ...changes,
  };
}

const sineClaim = (outcome: Worded<ClaimResult>['outcome'], value: string): Worded<ClaimResult> =>
  claim(outcome, { text: 'pure sine', quantity: 'waveform', value, limit: null });

describe('answerSentence', () => {
  it.each([
    ['pure sine', 'At 300 W resistive (as told) this is a pure sine: 2.1 % distortion, give or take 0.4.'],
    [
      'distorted sine',
      'At 300 W resistive (as told) this is a distorted sine: 2.1 % distortion, give or take 0.4.',
    ],
    [
      'modified sine',
      'At 300 W resistive (as told) this is a modified sine, not a sine: 25 % of the time at zero, 2.1 % distortion, give or take 0.4.',
    ],
    [
      'stepped',
      'At 300 W resistive (as told) this is a stepped wave of 9 levels: 2.1 % distortion, give or take 0.4.',
    ],
    [
      'square',
      'At 300 W resistive (as told) this is a square wave, not a sine: 2.1 % distortion, give or take 0.4.',
    ],
    [
      'not classified',
      'At 300 W resistive (as told) this wave can’t be classified: no two cycles are alike.',
    ],
  ] as const)('names a wave that is %s', (kind, sentence) => {
    expect(plain(answerSentence(resultOf(kind, { findings: [] })))).toBe(sentence);
  });

  it('says nothing of a load that nobody knows', () => {
    const { loadSeen: _seen, ...untold } = resultOf('pure sine');
    expect(plain(answerSentence(untold))).toBe('This is a pure sine: 2.1 % distortion, give or take 0.4.');
  });

  it('says where the load is known from', () => {
    const lead = (loadSeen: LoadSeen): string =>
      plain(answerSentence(resultOf('pure sine', { loadSeen }))).replace(/ this is.*/, '');
    expect(lead({ from: 'measured', text: '258 W', watts: 258 })).toBe('At 258 W measured');
    expect(lead({ from: 'measured', text: 'no load', watts: 0 })).toBe('At no load (measured)');
    expect(lead({ from: 'file name', text: '300 W', watts: 300 })).toBe('At 300 W (by the file’s name)');
  });

  it('says “at the edge” where the doubt reaches the threshold', () => {
    const edge = resultOf('pure sine');
    const waveform = { ...edge.waveform, atTheEdge: true };
    expect(answerSentence({ ...edge, waveform })).toContain('a pure sine, at the edge: ');
  });

  it.each([
    ['pass', 'pure sine', 'Yes, at 300 W'],
    ['conditional pass', 'pure sine', 'It probably holds: at 300 W'],
    ['conditional fail', 'distorted sine', 'It probably fails: at 300 W'],
    ['fail', 'distorted sine', 'No, at 300 W'],
  ] as const)('answers a single claim about the kind: %s', (outcome, value, start) => {
    const sentence = plain(answerSentence(resultOf('pure sine', { claims: [sineClaim(outcome, value)] })));
    expect(sentence.startsWith(start)).toBe(true);
  });

  it.each([
    ['pass', 'Yes, at 300 W'],
    ['conditional pass', 'It probably holds: THD 5.2 %; at 300 W'],
    ['conditional fail', 'It probably fails: THD 5.2 %; at 300 W'],
    ['fail', 'No, THD 5.2 %; at 300 W'],
  ] as const)('answers a single claim about a number with its value: %s', (outcome, start) => {
    const sentence = plain(answerSentence(resultOf('pure sine', { claims: [claim(outcome)] })));
    expect(sentence.slice(0, start.length)).toBe(start);
  });

  it('gives the reason where a claim can’t be judged', () => {
    const claims = [claim('not judged', { value: null, reason: 'the record holds no whole cycle' })];
    expect(plain(answerSentence(resultOf('pure sine', { claims })))).toMatch(
      /^Can’t be told, the record holds no whole cycle; at 300 W/,
    );
  });

  it('lets the worst of several claims decide and names it', () => {
    const claims = [sineClaim('pass', 'pure sine'), claim('conditional pass'), claim('fail')];
    expect(answerSentence(resultOf('pure sine', { claims }))).toMatch(/^No, “THD < 3 %” fails; at/);
    expect(answerSentence(resultOf('pure sine', { claims: claims.slice(0, 2) }))).toMatch(
      /^“THD < 3 %” only probably holds; at/,
    );
    const twice = [...claims, claim('fail', { text: 'THD < 1 %' })];
    expect(answerSentence(resultOf('pure sine', { claims: twice }))).toMatch(
      /^No, “THD < 3 %” and 1 more fail; at/,
    );
  });

  it('says of a distorted sine when it is inside the public limits all the same', () => {
    const inside: Finding = { ...good.findings[0]!, side: 'inside', provenance: 'public' };
    const words = /, yet inside the reference limits for mains\.$/;
    expect(answerSentence(resultOf('distorted sine', { findings: [inside] }))).toMatch(words);
    expect(answerSentence(resultOf('pure sine', { findings: [inside] }))).not.toMatch(words);
    const outside: Finding = { ...inside, side: 'outside' };
    expect(answerSentence(resultOf('distorted sine', { findings: [inside, outside] }))).not.toMatch(words);
    const memory: Finding = { ...inside, provenance: 'memory' };
    expect(answerSentence(resultOf('distorted sine', { findings: [memory] }))).not.toMatch(words);
  });

  it('finds no wave where nothing repeats, and does not say of it that it can’t be classified', () => {
    const base = resultOf('not classified');
    const frequencyHz = { value: null, reason: 'a direct voltage: nothing repeats' };
    const waveform = { ...base.waveform, reasons: ['a direct voltage, in which nothing alternates'] };
    const direct = { ...base, waveform, voltage: { ...base.voltage!, frequencyHz } };
    expect(answerSentence(direct)).toMatch(
      /here is no wave to classify: a direct voltage, in which nothing alternates\.$/,
    );
  });

  it('speaks of a current where only a current was measured', () => {
    expect(answerSentence(assays.current!().result)).toContain('this current can’t be classified');
  });
});

describe('questionSentence', () => {
  it('asks for the claim, or what it is', () => {
    expect(questionSentence(resultOf('pure sine'))).toBe('What is it?');
    expect(questionSentence(resultOf('pure sine', { claims: [claim('pass')] }))).toBe(
      'Does “THD < 3 %” hold?',
    );
    expect(questionSentence(resultOf('pure sine', { claims: [claim('pass'), claim('fail')] }))).toBe(
      'Do the 2 claims hold?',
    );
  });
});

describe('distortionPhrase', () => {
  it.each([
    [{ value: 2.13, uncertainty: 0.41 }, '2.1 % distortion, give or take 0.4'],
    [{ value: 0.3, uncertainty: 0.4, notAbove: 0.613 }, 'distortion not above 0.62 %'],
    [{ value: 48.34, uncertainty: 0 }, '48.34 % distortion'],
    [{ value: null, reason: 'no period' }, 'distortion not measurable'],
  ])('%j reads “%s”', (figure, text) => {
    expect(plain(distortionPhrase(figure))).toBe(text);
  });
});

describe('loadPhrase', () => {
  it.each([
    ['300 W', 'at 300 W', 'at 300 watts'],
    ['300 W resistive', 'at 300 W resistive', 'at 300 watts resistive'],
    ['300 W, resistive', 'at 300 W, resistive', 'at 300 watts, resistive'],
    ['1.5 kW heater', 'with a 1.5 kW heater', 'with a 1.5 kilowatt heater'],
    ['800 W heater and fan', 'with an 800 W heater and fan', 'with an 800 watt heater and fan'],
    ['11 W lamp', 'with an 11 W lamp', 'with an 11 watt lamp'],
    ['1100 W kettle', 'with a 1100 W kettle', 'with a 1100 watt kettle'],
    ['300 W lamps', 'at 300 W lamps', 'at 300 watts lamps'],
    ['40 % load', 'at 40 % load', 'at 40 percent load'],
    ['40 %', 'at 40 %', 'at 40 percent'],
    ['no load', 'at no load', 'at no load'],
    ['a kettle', 'with a kettle', 'with a kettle'],
    ['300 Watchmen', 'at 300 Watchmen', 'at 300 Watchmen'],
  ])('%j reads “%s” and is spoken “%s”', (load, written, spoken) => {
    expect(plain(loadPhrase(load))).toBe(written);
    expect(plain(loadPhrase(load, true))).toBe(spoken);
  });
});

describe('outcomeWords', () => {
  it('softens what is conditional', () => {
    expect(outcomeWords('conditional pass')).toBe('probably holds');
    expect(outcomeWords('conditional fail')).toBe('probably fails');
  });
});

describe('claimsSentence', () => {
  it('gives each claim its outcome, and its value where it does not plainly hold', () => {
    const claims = [
      sineClaim('pass', 'pure sine'),
      claim('conditional fail'),
      claim('not judged', { value: null }),
    ];
    expect(plain(claimsSentence(claims))).toBe(
      '“pure sine” holds; “THD < 3 %” probably fails (5.2 %); “THD < 3 %” can’t be judged (nothing measured).',
    );
  });
});

describe('spokenLines', () => {
  it('says the answer as people speak, and what it is not', () => {
    const { loadSeen: _seen, ...untold } = resultOf('pure sine');
    const loadSeen = { from: 'told', text: '300 W', watts: 300 } as const;
    expect(spokenLines({ ...untold, loadSeen }).map(plain)).toEqual([
      'At 300 watts this is a sine: 2.1 % distortion, give or take 0.4.',
      'One capture, not a certificate.',
    ]);
    expect(plain(spokenLines(untold)[0])).toMatch(/^This is a sine/);
  });

  it.each([
    [[claim('pass')], 'The claim holds: at'],
    [[claim('conditional fail')], '“THD < 3 %” probably fails (5.2 %): at'],
    [[claim('pass'), claim('fail')], '“THD < 3 %” fails (5.2 %): at'],
    [
      [claim('fail'), claim('fail', { text: 'THD < 1 %' })],
      '“THD < 3 %” fails (5.2 %) and “THD < 1 %” fails (5.2 %): at',
    ],
    [[claim('pass'), claim('conditional pass')], 'The 2 claims probably hold: at'],
  ] as const)('says first how the claims stand, and names those that fail', (claims, start) => {
    expect(plain(spokenLines(resultOf('pure sine', { claims }))[0]).slice(0, start.length)).toBe(start);
  });
});

describe('findingSentence', () => {
  const row = (changes: Partial<Finding>): Finding => ({
    standard: 'EN 50160',
    edition: '2010',
    clause: '4.2.5',
    quantity: 'harmonic 15 (% of fundamental)',
    value: 0.65,
    limit: { max: 0.5 },
    margin: -0.15,
    outcome: 'fail',
    side: 'outside',
    provenance: 'public',
    ...changes,
  });
  const inside = row({
    quantity: 'THD (%)',
    value: 2.1,
    limit: { max: 8 },
    margin: 5.9,
    outcome: 'pass',
    side: 'inside',
  });

  it('counts the public limits that are exceeded and names the worst', () => {
    expect(plain(findingSentence([inside, row({})]) ?? '')).toBe(
      'Outside 1 of 2 reference limits, worst: harmonic 15 at 0.65 %, limit at most 0.5 % (EN 50160:2010, 4.2.5).',
    );
  });

  it('names the most telling where all hold', () => {
    expect(plain(findingSentence([inside]) ?? '')).toBe(
      'Inside 1 reference limit: THD at 2.1 %, limit at most 8 % (EN 50160:2010, 4.2.5).',
    );
  });

  it('leaves limits from memory out', () => {
    expect(findingSentence([row({ provenance: 'memory', outcome: 'information' })])).toBeNull();
    expect(findingSentence([])).toBeNull();
  });
});

describe('averageMeterPhrase', () => {
  const of = (value: number) =>
    averageMeterPhrase({
      acRms: { value: 120, uncertainty: 1 },
      averageResponding: { value, uncertainty: 1.2 },
    });

  it('speaks where the meter is off by more than 1 %', () => {
    expect(of(121.1)).toBeNull();
    expect(plain(of(118.7)?.sentence ?? '')).toBe('A meter that is not true-RMS shows 118.7 ± 1.2 V here.');
    expect(averageMeterPhrase(null)).toBeNull();
  });
});

describe('powerSentence(result) says what the load takes and what kind it is', () => {
  const figure = (value: number): { value: number; uncertainty: number } => ({
    value,
    uncertainty: value / 50,
  });
  const power = { activeW: figure(300), powerFactor: figure(0.8) } as NonNullable<MeasureResult['power']>;

  it.each([
    ['resistive', 'a resistive load.'],
    ['inductive', 'an inductive load.'],
  ] as const)('%s', (kind, said) => {
    const sentence = powerSentence({ ...good, power, loadKind: { kind, reasons: [] } });
    expect(plain(sentence!)).toBe(`Load as measured: 300 ± 6 W, power factor 0.800 ± 0.016, ${said}`);
  });

  it('says no kind where it can’t tell, and nothing without a current', () => {
    const unsure = { ...good, power, loadKind: { kind: 'not classified', reasons: [] } } as const;
    expect(powerSentence(unsure)).toMatch(/0\.016\.$/);
    expect(powerSentence(good)).toBeNull();
  });
});
