import { type LayoutCase, testLayouts } from './layoutCase.ts';
import { INTERVAL_S, lines, rows, START_S, sampled, timeOf, volts } from './wave.ts';

const V = sampled(volts);
const time = { startS: START_S, intervalS: INTERVAL_S };
const header = 'Time (µs),Outlet (V)';
const body = rows().map((i) => `${(timeOf(i) * 1e6).toFixed(0)},${V[i]!}`);
const text = lines([header, ...body]);
const utf16 = (content: string, isBig: boolean): Uint8Array => {
  const bytes = new Uint8Array(2 * content.length);
  const view = new DataView(bytes.buffer);
  [...content].forEach((character, i) => {
    view.setUint16(2 * i, character.charCodeAt(0), !isBig);
  });
  return bytes;
};
const latin1 = Uint8Array.from(text, (character) => character.charCodeAt(0));
const semicolon = (decimal: (number: string) => string): string =>
  lines([
    'Time (ms);Outlet (V)',
    ...rows().map((i) => decimal(`${(timeOf(i) * 1e3).toFixed(1)};${V[i]!.toFixed(2)}`)),
  ]);

const cases: LayoutCase[] = [
  ...(
    [
      ['UTF-8 without a mark', new TextEncoder().encode(text)],
      ['UTF-8 with a mark', new TextEncoder().encode(`\ufeff${text}`)],
      ['UTF-16 LE with a mark', utf16(`\ufeff${text}`, false)],
      ['UTF-16 BE with a mark', utf16(`\ufeff${text}`, true)],
      ['UTF-16 LE without a mark', utf16(text, false)],
      ['UTF-16 BE without a mark', utf16(text, true)],
      ['Latin-1', latin1],
      ['carriage returns alone', new TextEncoder().encode(text.replaceAll('\n', '\r'))],
      ['carriage return and line feed', new TextEncoder().encode(text.replaceAll('\n', '\r\n'))],
      ['line ends written twice over', new TextEncoder().encode(text.replaceAll('\n', '\r\r\n'))],
      ['no end behind the last line', new TextEncoder().encode(text.slice(0, -1))],
    ] as const
  ).map(([title, file]): LayoutCase => ({ title, file, ...time, channels: [['Outlet', 'V', V]] })),
  {
    title: 'a semicolon with a decimal comma',
    file: semicolon((row) => row.replaceAll('.', ',')),
    ...time,
    channels: [['Outlet', 'V', V]],
  },
  {
    title: 'a semicolon with a decimal point',
    file: semicolon((row) => row),
    ...time,
    channels: [['Outlet', 'V', V]],
  },
  {
    title: 'tabs with a decimal comma',
    file: semicolon((row) => row.replaceAll('.', ',')).replaceAll(';', '\t'),
    ...time,
    channels: [['Outlet', 'V', V]],
  },
  {
    title: 'commas with quoted decimal commas',
    file: lines([
      'Time (ms),Outlet (V)',
      ...rows().map((i) => `"${(timeOf(i) * 1e3).toFixed(1)}","${V[i]!.toFixed(2)}"`.replaceAll('.', ',')),
    ]),
    ...time,
    channels: [['Outlet', 'V', V]],
  },
  {
    title: 'one column of decimal commas is not two columns',
    file: lines(['Outlet (V)', ...V.map((v) => v.toFixed(2).replace('.', ','))]),
    sampleRateHz: 5000,
    startS: 0,
    intervalS: INTERVAL_S,
    channels: [['Outlet', 'V', V]],
  },
  {
    title: 'times padded with blanks, or a sign and then zeros',
    file: lines([
      'Time (s),Outlet (V)',
      ...rows().map((i) => {
        const t = timeOf(i);
        const digits = Math.abs(t).toFixed(4).padStart(7, '0');
        return i % 2 === 0 ? `   ${t.toFixed(4)} , ${V[i]}  ` : `${t < 0 ? '-' : '+'}${digits},${V[i]}`;
      }),
    ]),
    ...time,
    channels: [['Outlet', 'V', V]],
  },
  {
    title: 'three-digit exponents',
    file: lines([
      'Time (s),Outlet (V)',
      ...rows().map(
        (i) =>
          `${timeOf(i)
            .toExponential(4)
            .replace(/e([+-])(\d+)$/, (_, sign, digits) => `E${sign}${digits.padStart(3, '0')}`)},${V[i]}`,
      ),
    ]),
    ...time,
    channels: [['Outlet', 'V', V]],
  },
];

testLayouts(cases);
