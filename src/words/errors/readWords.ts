import type { ForeignKind, ReadErrors, YamlFault } from '../../read/readErrors.ts';
import { counted, type ErrorWords } from './wording.ts';

const CAPTURE = 'rows of numbers as text, such as a CSV';
const RISING = 'a time that rises from row to row';

export const readWords: ErrorWords<ReadErrors> = {
  'file.empty': () => ({
    message: 'The file is empty.',
    expected: CAPTURE,
    received: '0 bytes',
    advice: 'save the waveform again: the storage may have been pulled out too early',
  }),
  'file.empty.blank': ({ bytes }) => ({
    message: 'The file holds nothing but blanks.',
    expected: CAPTURE,
    received: `${bytes} bytes of blanks`,
    advice: 'save the waveform again',
  }),
  'file.foreign': ({ kind }) => {
    const [received, advice] = FOREIGN[kind];
    return { message: `The file is ${received}, not a capture.`, expected: CAPTURE, received, advice };
  },
  'file.binary': ({ controlShare }) => ({
    message: 'The file is binary, not text.',
    expected: CAPTURE,
    received: `${(100 * controlShare).toFixed(0)} % control characters`,
    advice: "save the waveform as CSV, not in the scope's own format",
  }),
  'file.spectrum': ({ axis }) => ({
    message: 'The file is a spectrum, not a waveform.',
    expected: 'a voltage against time',
    received: axis === null ? 'a horizontal axis in hertz' : `"${axis}" as the axis, a frequency`,
    advice: 'switch the math or FFT trace off and save the voltage channel itself',
  }),
  'rows.none': ({ last }) => ({
    message: 'The file holds no rows of numbers.',
    expected: 'rows of numbers, one a sample, under any header',
    received: last === '' ? 'no rows' : `text such as "${last}"`,
    advice: 'save the waveform (not the settings, not the picture) as CSV',
  }),
  'rows.few': ({ rows, least }) => ({
    message: `The file holds only ${counted(rows, 'row')} of numbers.`,
    expected: `at least ${least} rows, and three cycles of the wave`,
    received: counted(rows, 'row'),
    advice: 'save the waveform itself, one row a sample, not a table of measurements',
  }),
  'rows.malformed': ({ malformed, rows, found }) => ({
    message: `${malformed} of ${rows} rows can't be read.`,
    expected: 'rows of numbers like those around it',
    received: found,
    advice: 'save the waveform again, or take the broken rows out in a text editor',
  }),
  'columns.many': ({ columns, most }) => ({
    message: `The file has ${columns} columns.`,
    expected: `a column of time and those of the channels, at most ${most}`,
    received: `${columns} columns`,
    advice: 'save the waveform with one row a sample: rows and columns may have been exchanged',
  }),
  'yaml.syntax': ({ found }) => ({
    message: 'The file is no YAML.',
    expected: 'lines such as "gainPercent: 3"',
    received: yamlPhrase(found),
    advice:
      'written' in found
        ? 'put a text that begins with * between quotes'
        : 'check the indentation, the colons and the quotes on that line',
  }),
  'time.none': ({ isNumbered, textColumn }, option) => ({
    message: "The file doesn't say how fast it was sampled.",
    expected: 'a column of times, or a sampling interval or sample rate above the rows',
    received:
      textColumn !== null
        ? `a column "${textColumn}" that holds no plain numbers`
        : isNumbered
          ? 'numbered rows'
          : 'values alone',
    advice: `give the scope's sample rate with ${option('sampleRateHz')}, such as ${option('sampleRateHz')} 100000; a slow log of watts, or of volts and amperes, is one for the command "energy"`,
  }),
  'time.slow': ({ intervalS }) => ({
    message: 'The file is a slow log, not a capture of a wave.',
    expected: 'many samples in each cycle of the wave',
    received: `a row every ${Number(intervalS.toPrecision(4))} s`,
    advice: 'for energy and run time measure it with the command "energy"',
  }),
  'time.absurd.interval': ({ intervalS, shortestS, longestS }) => ({
    message: 'No instrument samples at such times.',
    expected: `between ${shortestS} s and ${longestS} s from sample to sample`,
    received: `${intervalS} s from sample to sample`,
    advice: 'check the sampling interval or rate in the file, or the sample rate given',
  }),
  'time.absurd.start': ({ startS, latestS }) => ({
    message: 'No instrument samples at such times.',
    expected: `a first sample within ${latestS} s`,
    received: `a first sample at ${startS} s`,
    advice: 'check the sampling interval or rate in the file, or the sample rate given',
  }),
  'time.still': ({ stamp }, option) => ({
    message: 'The time stands still: every row has the same stamp.',
    expected: RISING,
    received: stamp === null ? 'no time at all' : `${stamp} in every row`,
    advice: moreDigits(option('sampleRateHz')),
  }),
  'time.still.coarse': ({ stamps, rows }, option) => ({
    message: 'The time hardly moves: it is too coarse for the samples.',
    expected: RISING,
    received: `${stamps} different stamps in ${rows} rows`,
    advice: moreDigits(option('sampleRateHz')),
  }),
  'time.backwards': ({ before, after }) => ({
    message: 'The time runs back.',
    expected: `a time not before ${before}`,
    received: `${after}`,
    advice: 'save the waveform again; if the rows were sorted or edited, restore their order',
  }),
  'time.uneven': ({ channel }) => ({
    message: `The samples of ${channel} are unevenly spaced in time, too far apart to fill in.`,
    expected: 'samples at even intervals',
    received: 'rows at uneven times',
    advice: 'save every sample: switch off any saving of changed values only, and any variable time step',
  }),
  'values.none': () => ({
    message: 'No channel holds more than a few numbers.',
    expected: 'numbers in the columns of the channels',
    received: 'nan, blanks, stars or marks for a range that was exceeded in nearly every row',
    advice: 'check that the channel was on and its range not exceeded, and save the waveform again',
  }),
  'channels.none': () => ({
    message: 'The file has a time column and no channel beside it.',
    expected: 'a column of volts or amperes',
    received: 'a column of time alone',
    advice: 'switch the channel on and save the waveform again',
  }),
  'channels.none.measurable': ({ channels }, option) => ({
    message: 'The capture has no channel in volts or amperes.',
    expected: 'a voltage channel',
    received: channels.map(({ name, unit }) => (unit === '' ? name : `${name} (${unit})`)).join(', '),
    advice: asVoltage(option('scales')),
  }),
  'channels.disagree': ({ channel, differences }) => {
    const phrases = (of: (difference: (typeof differences)[number]) => string) =>
      differences.map(of).join(', ');
    return {
      message: `${channel} does not fit to the capture: ${phrases(({ of }) => TIME_BASE[of][0])} differ.`,
      expected: phrases(({ of, values: [own] }) => TIME_BASE[of][1](own)),
      received: phrases(({ of, values: [, other] }) => TIME_BASE[of][1](other)),
      advice: 'stop the scope once, then save both channels with the same settings',
    };
  },
  'channel.unknown': ({ wanted, channels }) => ({
    message: `The capture has no channel "${wanted}".`,
    expected: `one of ${channels.join(', ')}`,
    received: wanted,
    advice: `name one of its channels: ${channels.join(', ')}`,
  }),
  'channel.unmeasurable': ({ channel, unit }, option) => ({
    message: `${channel} carries neither volts nor amperes.`,
    expected: 'a voltage or a current',
    received: unit === '' ? 'a channel without a unit' : `a channel in ${unit}`,
    advice: asVoltage(option('scales')),
  }),
  'channel.unmeasurable.current': ({ channel, unit }) => ({
    message: `${channel} is not a current.`,
    expected: "a clamp's or shunt's channel, in A or V",
    received: `a channel in ${unit}`,
    advice: 'name the channel that the clamp or shunt is on',
  }),
  'channel.difference': ({ names: [plus, minus], quantities }, option) => ({
    message: `${plus} and ${minus} can't be subtracted.`,
    expected: 'two voltages or two currents',
    received: quantities.join(' and '),
    advice: `name two channels of one kind; for channels in counts give their ${option('scales')}`,
  }),
  'scale.absurd': ({ factor, least, most }) => ({
    message: 'No probe, divider or clamp has such a ratio.',
    expected: `a factor between ${least} and ${most}`,
    received: `${factor}`,
    advice: 'give what the values in the file are to be multiplied by, such as 200 for a probe set to 1:200',
  }),
};

const SAVE_AS_CSV = "a screenshot can't be measured: save the waveform as CSV";
const EXPORT_TEXT = 'export the waveform itself as CSV, plain text with one row a sample';
const UNPACK = 'unpack it, or save the sheet as CSV, and give that file';

/** What it is, and what its owner can do. */
const FOREIGN: Readonly<Record<ForeignKind, readonly [is: string, advice: string]>> = {
  png: ['a PNG picture', SAVE_AS_CSV],
  jpeg: ['a JPEG picture', SAVE_AS_CSV],
  gif: ['a GIF picture', SAVE_AS_CSV],
  tiff: ['a TIFF picture', SAVE_AS_CSV],
  bmp: ['a BMP picture', SAVE_AS_CSV],
  pdf: ['a PDF document', EXPORT_TEXT],
  zip: ['a ZIP archive or a spreadsheet workbook', UNPACK],
  'empty zip': ['an empty ZIP archive', UNPACK],
  gzip: ['a compressed (gzip) file', UNPACK],
  'office document': ['an office document', UNPACK],
  'web page': ['a web page (HTML)', 'download the file itself, not the page that shows it'],
  xml: ['an XML document', EXPORT_TEXT],
};

/** What differs, and what it is in one of the two. */
const TIME_BASE = {
  sampleCount: ['the numbers of samples', (count: number) => `${count} samples`],
  startS: ['the start times', (at: number) => `start at ${seconds(at)}`],
  intervalS: ['the sample intervals', (interval: number) => `a sample every ${seconds(interval)}`],
} as const;

function seconds(value: number): string {
  return `${Number(value.toPrecision(7))} s`;
}

function moreDigits(sampleRate: string): string {
  return `save the waveform with more digits of time, or without the time column and give ${sampleRate}`;
}

function asVoltage(scale: string): string {
  return `if it is a voltage in other clothes, give its volts per unit with ${scale} NAME=FACTOR`;
}

function yamlPhrase(found: YamlFault): string {
  if ('library' in found) return found.library;
  switch (found.is) {
    case 'several documents':
      return 'a second document behind a line of ---';
    case 'reference mark':
      return 'a word that begins with * or &, which names a reference';
    case 'deep':
      return 'lists within lists, deeper than anybody writes';
    case 'many references':
      return 'references to references, of which more come than anybody writes';
    case 'unknown reference':
      return `${found.written}, a reference to something that is named nowhere`;
    case 'reference to itself':
      return `${found.written}, which refers to what it stands in`;
    case 'long':
      return `${Math.ceil(found.characters / 1e6)} MB`;
  }
}
