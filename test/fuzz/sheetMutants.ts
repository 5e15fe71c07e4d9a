/**
 * What happens to sheets on their way, by accident or by a hand: bytes lost, tags and attributes changed, and the data
 * inside them edited, with the digests left alone or made to fit again.
 */

type Random = () => number;

const whole = (random: Random, below: number): number => Math.floor(random() * below);
const oneOf = <T>(random: Random, items: readonly T[]): T => items[whole(random, items.length)]!;

/** One place of those that fit, changed. */
function atOne(pattern: RegExp, change: (found: string, random: Random) => string) {
  return (text: string, random: Random): string => {
    const places = [...text.matchAll(pattern)];
    if (places.length === 0) return text;
    const { index, 0: found } = oneOf(random, places);
    return text.slice(0, index) + change(found, random) + text.slice(index + found.length);
  };
}

const NUMBERS = [
  '0',
  '-1',
  '1e308',
  '-1e308',
  '5e-324',
  '1e999',
  '1e22',
  '-0',
  '0.5',
  '7',
  '123456789012345678901',
];
const VALUES = [
  'null',
  'true',
  '""',
  '[]',
  '{}',
  '"\\u202e"',
  '"</metadata>"',
  '"&lt;b&gt;"',
  '[[[[]]]]',
  '"1"',
  '3',
];
const KEYS = [
  'result',
  'picture',
  'program',
  'value',
  '__proto__',
  'constructor',
  'pictureSha256',
  'told',
  'file',
];
const MARKUP = [
  '<script>alert(1)</script>',
  '<image href="x.png" width="1600" height="900"/>',
  '<metadata id="evidence">{}</metadata>',
  '</metadata>',
  '<!--',
  ']]>',
  '<text x="9" y="9">230 V</text>',
  '<a data-b=">">',
  '&amp;',
  '\u0000',
];

const inData = /"[^"\\]{1,40}":/g;
const numberInData = /(?<=[:[,])-?\d+(?:\.\d+)?(?:e[+-]?\d+)?(?=[,}\]])/g;
const textInData = /(?<=:)"[^"\\]*"(?=[,}])/g;

/** Changes of the data alone, as JSON. */
const ofData: Record<string, (json: string, random: Random) => string> = {
  'number changed': atOne(numberInData, (_, random) => oneOf(random, NUMBERS)),
  'digit changed': atOne(/(?<=[:[,.\d])\d(?=[\d.,}\]])/g, (_, random) => String(whole(random, 10))),
  'text swapped': atOne(textInData, (_, random) => JSON.stringify(oneOf(random, MARKUP))),
  'long text': atOne(textInData, (_, random) => JSON.stringify('W'.repeat(whole(random, 30_000)))),
  'value of another kind': atOne(numberInData, (_, random) => oneOf(random, VALUES)),
  'text of another kind': atOne(textInData, (_, random) => oneOf(random, [...VALUES, ...NUMBERS])),
  'key doubled': atOne(inData, (found, random) => `${found}${oneOf(random, VALUES)},${found}`),
  'key doubled in front': (json, random) =>
    json.replace('{', `{"${oneOf(random, KEYS)}":${oneOf(random, VALUES)},`),
  'key added': atOne(inData, (found, random) => `"${oneOf(random, KEYS)}":${oneOf(random, VALUES)},${found}`),
  'key renamed': atOne(inData, (_, random) => `"${oneOf(random, KEYS)}":`),
  'key written otherwise': atOne(
    /"[a-z][^"\\]*":/g,
    (found) => `"\\u00${found.charCodeAt(1).toString(16)}${found.slice(2)}`,
  ),
  'list emptied': atOne(/\[[^[\]]*\]/g, () => '[]'),
  'list longer': atOne(
    /\[[^[\]]+(?=\])/g,
    (found, random) => `${found},${oneOf(random, [...VALUES, ...NUMBERS])}`,
  ),
  'object emptied': atOne(/\{[^{}]*\}/g, () => '{}'),
  nested: atOne(numberInData, (found, random) => {
    const depth = whole(random, 20_000);
    return '['.repeat(depth) + found + ']'.repeat(depth);
  }),
  'blank added': atOne(/,/g, () => ', '),
  'tail cut': (json, random) => json.slice(0, whole(random, json.length)),
  'digest damaged': atOne(/[0-9a-f](?=[0-9a-f]{0,63}")/g, (found) => (found === '0' ? '1' : '0')),
};

/** The part of the data that says how a capture was measured. */
const options = /"options":\{.*?\},"result"/;

ofData['option changed'] = (json, random) => {
  const found = options.exec(json);
  if (found === null) return json;
  const change = oneOf(random, [
    ofData['number changed']!,
    ofData['value of another kind']!,
    ofData['text swapped']!,
  ]);
  return json.slice(0, found.index) + change(found[0], random) + json.slice(found.index + found[0].length);
};

/** Changes of the whole file. */
const ofFile: Readonly<Record<string, (text: string, random: Random) => string>> = {
  'letter changed': (text, random) => {
    const at = whole(random, text.length);
    return text.slice(0, at) + String.fromCharCode(32 + whole(random, 95)) + text.slice(at + 1);
  },
  'piece lost': (text, random) => {
    const at = whole(random, text.length);
    return text.slice(0, at) + text.slice(at + 1 + whole(random, 200));
  },
  'piece doubled': (text, random) => {
    const at = whole(random, text.length);
    return text.slice(0, at + 1 + whole(random, 200)) + text.slice(at);
  },
  'cut off': (text, random) => text.slice(0, whole(random, text.length)),
  'attribute changed': atOne(/ [\w-]+="[^"]*"/g, (found, random) =>
    oneOf(random, [
      found.replace(/\d/, (digit) => String((Number(digit) + 1) % 10)),
      found.replace('="', '=">'),
      `${found} data-a=">"`,
      found.replaceAll('"', "'"),
      '',
    ]),
  ),
  'tag put in': atOne(/\n(?=<)/g, (_, random) => `\n${oneOf(random, MARKUP)}`),
  'tag lost': atOne(/<[^<>]*>/g, () => ''),
  'shown text changed': atOne(/(?<=>)[^<>\n]+(?=<\/text)/g, (found) => `${found} V`),
  'font damaged': atOne(/(?<=base64,)[\w+/]{8}/g, (found) => found.split('').reverse().join('')),
  'data moved to the end': (text) => {
    const data = /<metadata[^>]*>[^<]*<\/metadata>\n/.exec(text)?.[0] ?? '';
    return text.replace(data, () => '').replace('</svg>', () => `${data}</svg>`);
  },
  'line ends changed': (text) => text.replaceAll('\n', '\r\n'),
  'mark in front': (text) => `\ufeff${text}`,
  'repeated tags': (text, random) =>
    text.replace('<metadata', () => '<metadata id="evidence" '.repeat(whole(random, 5000))),
};

export interface SheetMutant {
  readonly text: string;
  /** Names of what was done, in order. */
  readonly done: readonly string[];
}

/**
 * A damaged copy of a sheet: one to three changes of the file or of its data.
 *
 * @param sheet - as this program writes it.
 * @param resealed - makes the digests of changed data fit again, as somebody careful would; the picture stays.
 * @param random - decides everything: the same numbers give the same mutant.
 */
export function sheetMutant(sheet: string, resealed: (json: string) => string, random: Random): SheetMutant {
  const done: string[] = [];
  let text = sheet;
  const count = 1 + whole(random, 3);
  for (let i = 0; i < count; i++) {
    if (random() < 0.4) {
      const name = oneOf(random, Object.keys(ofFile));
      text = ofFile[name]!(text, random);
      done.push(name);
    } else {
      const name = oneOf(random, Object.keys(ofData));
      const seals = random() < 0.5;
      text = withData(text, (json) => {
        const changed = ofData[name]!(json, random);
        return seals ? resealed(changed) : changed;
      });
      done.push(seals ? `${name}, sealed again` : name);
    }
  }
  return { text, done };
}

const start = '<metadata id="evidence">';

function withData(text: string, change: (json: string) => string): string {
  const from = text.indexOf(start) + start.length;
  const to = text.indexOf('</metadata>', from);
  if (from < start.length || to < 0) return text;
  const json = text.slice(from, to).replaceAll('&lt;', '<').replaceAll('&gt;', '>').replaceAll('&amp;', '&');
  const data = change(json).replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
  return text.slice(0, from) + data + text.slice(to);
}
