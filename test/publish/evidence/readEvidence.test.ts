import { describe, expect, test } from 'vitest';
import { captureEvidence } from '../../../src/publish/evidence/captureEvidence.ts';
import { jsonOutline, readEvidence } from '../../../src/publish/evidence/readEvidence.ts';
import { sealedSheet } from '../../../src/publish/evidence/sealedSheet.ts';
import { assays } from '../../fixtures/assays.ts';
import { press } from '../../fixtures/openedSheets.ts';

const sheet = sealedSheet(press, captureEvidence(assays.goodSine!(), 'wave', {}, '1.0.0'));
const start = '<metadata id="evidence">';
const end = '</metadata>\n';

/** The sheet with the text of its data changed. */
function withJson(change: (json: string) => string): string {
  const from = sheet.indexOf(start) + start.length;
  const to = sheet.indexOf(end);
  return sheet.slice(0, from) + change(sheet.slice(from, to)) + sheet.slice(to);
}
const readingOf = (text: string): string => {
  try {
    readEvidence(text);
    return 'read';
  } catch (error) {
    const { code, detail } = error as { code: string; detail: { received?: string } };
    return `${code}: ${detail.received}`;
  }
};

test('what is no sheet, and what was one', () => {
  expect(readingOf('<svg xmlns="http://www.w3.org/2000/svg"></svg>')).toMatch(/^sheet\.none/);
  expect(readingOf('')).toMatch(/^sheet\.none/);
  expect(readingOf(`${start}{"schema":${end}`)).toBe('sheet.damaged: text that is no JSON');
  expect(readingOf(`${start}{"schema":"other"}${end}`)).toMatch(/^sheet\.damaged/);
  expect(readingOf(`${start}{}${end}${start}{}${end}`)).toBe('sheet.damaged: two results in one sheet');
  expect(readingOf(`${start}{"schema":"x"}`)).toBe('sheet.damaged: data without an end');
  expect(readingOf(sheet.replace(start, '<metadata data-a=">" id=\'evidence\'>'))).toBe('read');
});

describe('the shape is looked at before anything is drawn from it', () => {
  test.each<[string, string, string]>([
    ['a number for a list', '"method":[', '"method":3,"other":['],
    ['a text for a number', '"samples":', '"samples":"many","other":'],
    ['a number past all numbers', '"startS":', '"startS":1e999,"other":'],
    ['an order past all orders', '"options":{', '"options":{"orders":5000,'],
    ['a list for the options', '"options":{', '"options":[],"other":{'],
    ['an unknown picture', '"picture":"wave"', '"picture":"film"'],
    ['a digest that is none', '"sha256":"', '"sha256":"../'],
  ])('%s', (_, from, to) => {
    const changed = withJson((json) => json.replace(from, to));
    expect(changed).not.toBe(sheet);
    expect(readingOf(changed)).toMatch(
      /^sheet\.damaged: (something else than expected at “|data of another kind)/,
    );
  });

  test('the place is named', () => {
    const changed = withJson((json) => json.replace(/"rmsV":\{"value":[\d.]+/, '"rmsV":{"value":"much"'));
    expect(readingOf(changed)).toBe(
      'sheet.damaged: something else than expected at “result.voltage.rmsV.value”',
    );
  });
});

test('what is not as this version has it may be another version’s, and the advice says which', () => {
  const advice = (json: (text: string) => string): string => {
    try {
      readEvidence(withJson(json));
      return 'read';
    } catch (error) {
      return (error as { detail: { advice: string } }).detail.advice;
    }
  };
  expect(advice((json) => json.replace(/"program":"[^"]*"/, '"program":"9.9.9"'))).toBe('read');
  const film = (json: string): string => json.replace('"picture":"wave"', '"picture":"film"');
  expect(advice((json) => film(json).replace(/"program":"[^"]*"/, '"program":"9.9.9"'))).toBe(
    'They were edited or cut, or are of another version (they say 9.9.9): draw the sheet anew from the capture',
  );
  expect(advice(() => '{"schema":1}')).toBe('They were edited or cut: draw the sheet anew from the capture');
});

test('a figure that sheets don’t show may be missing, for earlier versions had fewer; one that they show may not', () => {
  const without = (key: string): string =>
    readingOf(withJson((json) => json.replace(`"${key}":`, '"other":')));
  expect(without('formFactor')).toBe('read');
  expect(without('crestFactor')).toBe(
    'sheet.damaged: something else than expected at “result.voltage.crestFactor”',
  );
});

test('a key twice in one object is refused by name, however it is written', () => {
  const twice = (key: string): string => readingOf(withJson((json) => json.replace('{', `{"${key}":1,`)));
  expect(twice('result')).toBe('sheet.damaged: the key “result” twice in one place');
  expect(twice('re\\u0073ult')).toBe('sheet.damaged: the key “result” twice in one place');
  expect(readingOf(withJson((json) => json.replace('"nominal":{', '"nominal":{"voltageV":1,')))).toBe(
    'sheet.damaged: the key “voltageV” twice in one place',
  );
});

test('jsonOutline counts levels and tells keys from texts', () => {
  expect(jsonOutline('{"a":[{"a":1},{"a":"a","b":"a\\"{[:"}]}')).toEqual({ depth: 3, doubledKey: null });
  expect(jsonOutline('{"a":1,"b":{"a":2},"a" :3}')).toEqual({ depth: 2, doubledKey: 'a' });
  expect(jsonOutline(']]}"')).toEqual({ depth: 0, doubledKey: null });
});

// With a pattern that runs back and forth each of these would take hours.
test.each<[string, string]>([
  ['tags without an end', '<metadata id="evidence" '.repeat(200_000)],
  ['tags of other names', '<metadata x="evidence">'.repeat(200_000)],
  ['quotes without an end', '<metadata "'.repeat(400_000)],
  ['data without an end', `${start}{`.repeat(200_000)],
  ['data in each other', `${start}${'['.repeat(4_000_000)}${end}`],
  ['keys in each other', `${start}${'{"a":'.repeat(800_000)}${end}`],
  ['escapes', `${start}"${'\\'.repeat(4_000_000)}${end}`],
  ['marks of characters', `${start}${'&lt'.repeat(1_000_000)}${end}`],
])('a file of %s is refused in one pass', (_, text) => {
  expect(readingOf(text)).toMatch(/^sheet\./);
});

test('a file longer than any sheet is refused before it is looked into', () => {
  expect(readingOf('<'.repeat(34_000_000))).toBe('sheet.damaged: 34 million characters');
});
