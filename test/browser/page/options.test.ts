import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { beforeAll, describe, expect, test } from 'vitest';
import { benchFolder } from '../../cli/benchFolder.ts';
import { runCommand } from '../../cli/runCommand.ts';
import { sineChannels, smallCapture } from '../../cli/smallCapture.ts';
import { openBrowser } from '../openBrowser.ts';
import { drop, openPage, save, saved, settled } from './openPage.ts';

const PATIENT = { timeout: 30_000 };

const instrument = {
  ...{ gainPercent: '1.5', probePercent: '0.5', offsetV: '0,8', bits: '8', timeBasePpm: '25' },
  ...{ distortionPercent: '0.1', bandwidthHz: '5e6', meterPercent: '0.6', meterBandwidthHz: '20000' },
};
const files: Readonly<Record<string, Uint8Array | string>> = {
  ...Object.fromEntries(
    ['b-blue-300w.csv', 'c-green-400w.csv', 'a-red-450w-current.csv', 'a-red-step-on.csv'].map((name) => [
      name,
      readFileSync(join('captures', name)),
    ]),
  ),
  'poles.csv': sineChannels([
    { name: 'L', unit: 'V', rms: 61 },
    { name: 'N', unit: 'V', rms: 59 },
  ]),
  'volts.csv': sineChannels([{ name: 'Out', unit: 'V', rms: 230 }]),
  'amperes.csv': sineChannels([
    { name: 'Spare', unit: 'A', rms: 9 },
    { name: 'Clamp', unit: 'A', rms: 2 },
  ]),
  'current-only.csv': sineChannels([{ name: 'Clamp', unit: 'A', rms: 2 }]),
  'timeless.csv': new TextDecoder()
    .decode(smallCapture())
    .split('\n')
    .filter((line) => /^-?\d/.test(line))
    .map((line) => line.split(',')[1])
    .join('\n'),
};
const folder = benchFolder({
  ...files,
  'instrument.yaml': Object.entries(instrument)
    .map(([key, value]) => `${key}: ${value.replace(',', '.')}\n`)
    .join(''),
});
let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});

interface Case {
  readonly files: readonly string[];
  /** Typed into the form, by field. */
  readonly told: Readonly<Record<string, string | boolean>>;
  /** Options of the command that say the same. */
  readonly words: readonly string[];
}

const cases: Readonly<Record<string, Case>> = {
  'claims, label, load, nominal': {
    files: ['b-blue-300w.csv'],
    told: {
      claims: 'pure sine\n115 V ±10 %\n\n60 Hz +- 0.5 Hz\nTHD < 3 %\ncrest 1.38..1.45',
      label: 'Inverter B (blue case) <b>&amp;',
      load: '300 W resistive',
      nominal: '115V/60Hz',
    },
    words: [
      ...['--claim', 'pure sine', '--claim', '115 V ±10 %', '--claim', '60 Hz +- 0.5 Hz'],
      ...['--claim', 'THD < 3 %', '--claim', 'crest 1.38..1.45', '--nominal', '115V/60Hz'],
      ...['--label', 'Inverter B (blue case) <b>&amp;', '--load', '300 W resistive'],
    ],
  },
  'scale, a measured channel that hangs upside down': {
    files: ['c-green-400w.csv'],
    told: { scale: '200', inverted: true, nominal: '230V/50Hz' },
    words: ['--scale', '200', '--invert', 'Output', '--nominal', '230V/50Hz'],
  },
  'every figure of the instrument, a THD of one’s own, a meter that counts DC': {
    files: ['a-red-450w-current.csv'],
    told: { ...instrument, sineThdPercent: '2.5', meterV: '118,2', meterDc: true },
    words: [...['--instrument', 'instrument.yaml', '--sine-thd', '2.5', '--meter', '118.2', '--meter-dc']],
  },
  'a transfer claimed for a capture that changes': {
    files: ['a-red-step-on.csv'],
    told: { claims: 'transfer < 20 ms\n120 V ±5 %', load: 'no load, then 600 W' },
    words: ['--claim', 'transfer < 20 ms', '--claim', '120 V ±5 %', '--load', 'no load, then 600 W'],
  },
  'the difference of two channels': {
    files: ['poles.csv'],
    told: { voltage: 'L-N' },
    words: ['--voltage', 'L-N'],
  },
  'the second of two channels, upside down': {
    files: ['poles.csv'],
    told: { voltage: 'N', inverted: true },
    words: ['--voltage', 'N', '--invert', 'N'],
  },
  'each of two channels': { files: ['poles.csv'], told: { voltage: 'all' }, words: ['--voltage', 'all'] },
  'a difference upside down: both of its channels': {
    files: ['poles.csv'],
    told: { voltage: 'L-N', inverted: true },
    words: ['--voltage', 'L-N', '--invert', 'L', '--invert', 'N'],
  },
  'a current alone, upside down': {
    files: ['current-only.csv'],
    told: { inverted: true },
    words: ['--invert', 'Clamp'],
  },
  'the current of another file': {
    files: ['volts.csv', 'amperes.csv'],
    told: { current: 'amperes.csv:Clamp' },
    words: ['--current', 'amperes.csv:Clamp'],
  },
  'a file without a time': {
    files: ['timeless.csv'],
    told: { sampleRateHz: '20000' },
    words: ['--sample-rate', '20000'],
  },
};

/** Tells the page what a person would, by its form. */
async function tell(page: Page, told: Case['told']): Promise<void> {
  await page.evaluate(() => {
    for (const details of document.querySelectorAll('details')) details.open = true;
  });
  for (const [field, value] of Object.entries(told)) {
    const at = page.locator(`#field-${field}`);
    if (typeof value === 'boolean') await at.setChecked(value);
    else if ((await at.evaluate(({ tagName }) => tagName)) === 'SELECT') await at.selectOption(value);
    else await at.fill(value);
  }
}

describe('told the same, page and command line give the same result and the same sheets, byte for byte', () => {
  test.each(Object.entries(cases))('%s', async (name, { files: names, told: said, words }) => {
    const [file] = names;
    const out = `out-${Object.keys(cases).indexOf(name)}`;
    const { stdout, stderr } = await runCommand(
      ['report', file!, ...words, '--json', '--out', out, '--no-gallery'],
      folder,
    );
    expect(stderr).toBe('');
    const { page, told } = await openPage(browser);
    await drop(
      page,
      names.map((one) => ({ name: one, content: files[one]! })),
    );
    await settled(page, names.length);
    await tell(page, said);
    const results = (): Promise<string> =>
      'voltage' in said && said.voltage === 'all'
        ? saved(page, () => page.click('#save-all-json')).then(({ text }) => text)
        : save(page, 'json').then(({ text }) => text);
    await expect.poll(() => page.isVisible('#known'), PATIENT).toBe(true);
    expect(await results()).toBe(stdout);
    if (said.voltage !== 'all') {
      const svg = await save(page, 'svg');
      expect(svg.text === readFileSync(join(folder, out, svg.name), 'utf8')).toBe(true);
    }
    expect(told).toEqual([]);
    await page.context().close();
  });
});
