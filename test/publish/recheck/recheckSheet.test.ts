import { createHash } from 'node:crypto';
import { JSDOM } from 'jsdom';
import { describe, expect, test } from 'vitest';
import type { Evidence } from '../../../src/draw/evidence.ts';
import { escapedBetweenTags } from '../../../src/draw/paper/writeText.ts';
import { captureEvidence, cardEvidence } from '../../../src/publish/evidence/captureEvidence.ts';
import { readEvidence } from '../../../src/publish/evidence/readEvidence.ts';
import { sealedSheet } from '../../../src/publish/evidence/sealedSheet.ts';
import { recheckSheet } from '../../../src/publish/recheck/recheckSheet.ts';
import { assays } from '../../fixtures/assays.ts';
import { benches } from '../../fixtures/benches.ts';
import { benchUnits } from '../../fixtures/benchUnits.ts';
import { someOf } from '../../samples.ts';

const version = '9.9.9';
const press = {
  document: new JSDOM().window.document,
  sha256: (text: string) => createHash('sha256').update(text).digest('hex'),
  typeface: [],
};
const common = { schema: 'sineassay/sheet@1', program: version, told: [] } as const;

function sheetOf(name: string): string {
  return sealedSheet(press, captureEvidence(assays[name]!(), 'wave', {}, version));
}
const faults = (text: string) =>
  recheckSheet(press, readEvidence(text), version).map(({ message }) => message);

/** The same sheet with its evidence changed and sealed again, as somebody careful would. */
function forged(text: string, change: (evidence: Evidence) => Evidence): string {
  const { evidence, picture } = readEvidence(text);
  const { resultSha256: _, evidenceSha256: __, pictureSha256, ...plain } = evidence;
  const changed = change(plain);
  const json = JSON.stringify({
    ...changed,
    resultSha256: press.sha256(JSON.stringify(changed.result)),
    evidenceSha256: press.sha256(JSON.stringify(changed)),
    pictureSha256,
  });
  const at = picture.indexOf('</desc>\n') + 8;
  return `${picture.slice(0, at)}<metadata id="evidence">${escapedBetweenTags(json)}</metadata>\n${picture.slice(at)}`;
}

describe('a sheet as it was drawn', () => {
  test.each(someOf(Object.keys(assays), 8))('%s: nothing is wrong', (name) => {
    expect(faults(sheetOf(name))).toEqual([]);
  });

  test.each(someOf(Object.keys(assays), 8))('card of %s: nothing is wrong', (name) => {
    expect(faults(sealedSheet(press, cardEvidence(assays[name]!(), 'dark', {}, version)))).toEqual([]);
  });

  test.each(someOf(Object.keys(benchUnits), 8))('sweep of %s: nothing is wrong', (name) => {
    const evidence = { ...common, picture: 'sweep', result: benchUnits[name]!() } as unknown as Evidence;
    expect(faults(sealedSheet(press, evidence))).toEqual([]);
  });

  test.each(someOf(Object.keys(benches), 8))('comparison of %s: nothing is wrong', (name) => {
    const evidence = { ...common, picture: 'comparison', result: benches[name]!() } as const;
    expect(faults(sealedSheet(press, evidence))).toEqual([]);
  });
});

describe('a sheet that was changed', () => {
  const [first, second] = Object.keys(assays) as [string, string];
  const sheet = sheetOf(first);
  const shownNumbers = [...sheet.matchAll(/<text[^>]*>([^<]*\d[^<]*)</g)].map(([, text]) => text!);

  test('every number that it shows is held: one digit changed in any text is found and quoted', () => {
    expect(shownNumbers.length).toBeGreaterThan(40);
    for (const text of someOf([...new Set(shownNumbers)], 8)) {
      const edited = text.replace(/\d/, (digit) => String((Number(digit) + 1) % 10));
      const found = faults(sheet.replace(`>${text}<`, `>${edited}<`));
      expect(found[0]).toContain('It shows');
      expect(found[0]).toContain('where its data give');
    }
  });

  test('a number changed in its data is found by the digest, and by the picture', () => {
    const { value } = assays[first]!().result.voltage!.rmsV as { value: number };
    const at = `"rmsV":{"value":${value}`;
    expect(sheet).toContain(at);
    const found = faults(sheet.replace(at, `"rmsV":{"value":${value + 5}`));
    expect(found[0]).toBe('The result inside it was changed after it was written.');
    expect(found.some((message) => message.startsWith('It shows'))).toBe(true);
  });

  test('a number changed in its data and sealed again is found by the picture', () => {
    const change = (evidence: Evidence): Evidence => {
      const { result } = evidence as ReturnType<typeof captureEvidence>;
      const voltage = { ...result.voltage!, rmsV: { value: 999, uncertainty: 1 } };
      return { ...evidence, result: { ...result, voltage } } as Evidence;
    };
    const found = faults(forged(sheet, change));
    expect(found.length).toBeGreaterThan(0);
    expect(found.every((message) => message.startsWith('It '))).toBe(true);
    expect(faults(forged(sheet, (evidence) => evidence))).toEqual([]);
  });

  test('an option changed in its data is found, though no picture shows it', () => {
    const found = faults(sheet.replace('"options":{', '"options":{"orders":7,'));
    expect(found).toEqual(['What it carries beside the result was changed after it was written.']);
  });

  test('the picture of another sheet is found', () => {
    const other = readEvidence(sheetOf(second)).picture;
    const data = /<metadata[\s\S]*<\/metadata>\n/.exec(sheet)![0];
    const at = other.indexOf('</desc>\n') + 8;
    expect(faults(other.slice(0, at) + data + other.slice(at)).length).toBeGreaterThan(0);
  });

  test('a curve bent, with every text left alone, is found', () => {
    const bent = sheet.replace(/ d="M([\d.]+),/, ' d="M1$1,');
    expect(bent).not.toBe(sheet);
    expect(faults(bent)).toEqual([
      'The picture is not the one that its data draw: it was changed or swapped.',
    ]);
  });

  test('of another version the picture can’t be checked, and that is a difference', () => {
    const open = (text: string) => recheckSheet(press, readEvidence(text), '10.0.0').map(({ code }) => code);
    expect(open(sheet)).toEqual(['program.other']);
    expect(open(sheet.replace(`>${shownNumbers[0]}<`, '>1<'))).toEqual(['program.other', 'picture.digest']);
    expect(open(sheet.replace('<metadata id="evidence">', '<metadata  id="evidence">'))).toEqual([
      'program.other',
      'file.form',
    ]);
    expect(recheckSheet(press, readEvidence(sheet), '10.0.0')[0]?.message).toBe(
      'The picture can’t be checked by this version: the sheet says that it was made by version “9.9.9”, this is 10.0.0.',
    );
  });

  test('line ends changed on its way are a difference, named as what they are', () => {
    const found = recheckSheet(press, readEvidence(sheet.replaceAll('\n', '\r\n')), version);
    expect(found.map(({ code }) => code)).toEqual(['file.lineEnds']);
  });

  const image = '<image href="other.png" width="1600" height="900"/>';
  test.each<[string, (text: string) => string]>([
    ['behind the end of the data, which the reader of XML sees earlier', (text) => doubledResult(text)],
    [
      'in a tag of the data with a > in an attribute',
      (text) => text.replace('<metadata id="evidence">', `<metadata data-a="></metadata>" id="evidence">`),
    ],
    ['in front of the data', (text) => text.replace('<metadata id=', `${image}\n<metadata id=`)],
    ['behind the data', (text) => text.replace('</metadata>\n', `</metadata>\n${image}\n`)],
    ['on the line of the data', (text) => text.replace('</metadata>\n', `</metadata>${image}\n`)],
    ['behind all', (text) => `${text}<!-- -->`],
    ['before all', (text) => `\ufeff${text}`],
    ['as a blank in the data', (text) => text.replace('{"schema"', '{ "schema"')],
    ['as a number written otherwise', (text) => text.replace(/("samples":\d+)/, '$1.0')],
    [
      'as a letter written as an escape',
      (text) => text.replace('"picture":"wave"', '"picture":"w\\u0061ve"'),
    ],
    ['as a digest of the picture', (text) => text.replace(/("pictureSha256":")./, '$1x')],
    ['as a > in the attribute of a text', (text) => text.replace('<text ', '<text data-a="><text>" ')],
  ])('something put %s', (_, change) => {
    const changed = change(sheet);
    expect(changed).not.toBe(sheet);
    const found = ((): readonly string[] => {
      try {
        return faults(changed);
      } catch (error) {
        if ((error as { code?: string }).code !== 'sheet.damaged') throw error;
        return ['damaged'];
      }
    })();
    expect(found.length).toBeGreaterThan(0);
  });

  /** A picture between two halves of JSON of which readers take the second for the first. */
  function doubledResult(text: string): string {
    const at = text.indexOf('"result":');
    return `${text.slice(0, at)}"result":"</metadata >${image}<metadata>",${text.slice(at)}`;
  }

  test('data that nothing can be drawn from are said, not thrown', () => {
    const steps = { steps: [{}], events: [], curves: [], distortion: null };
    const dynamics = { ...steps, timeS: [0], rmsHalfCycle: [1], instantaneous: null };
    const changes = { picture: 'changes', dynamics } as unknown as Evidence;
    const found = faults(forged(sheet, (evidence) => ({ ...evidence, ...changes }) as Evidence));
    expect(found[0]).toContain('No picture can be drawn from the data inside it');
  });
});
