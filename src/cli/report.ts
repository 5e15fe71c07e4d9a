import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import type { Command } from 'commander';
import { type Assay, sheetSvg } from '../index.ts';
import { refuseMeterForMany } from './measure.ts';
import { addMeasureOptions, type MeasureFlags } from './measureOptions.ts';
import { runCaptures } from './runCaptures.ts';
import { sheetNames } from './sheetNames.ts';
import { writeWhole } from './writeWhole.ts';

interface ReportFlags extends MeasureFlags {
  readonly out: string;
  readonly png?: boolean;
}

const after = `
Example:
  sineassay report evening/ --label "Inverter A" --load "300 W resistive" --claim "pure sine" --png
  writes one sheet a capture into the folder reports: reports/NAME.svg, and with --png reports/NAME.png.

Without a capture it takes the folder captures.`;

/** Adds `report`: the answer, and a sheet for each capture. */
export function registerReport(program: Command): void {
  addMeasureOptions(
    program
      .command('report')
      .description(
        'the same, and write a sheet for each capture: the wave, its figures and its limits on one page',
      )
      .argument('[capture...]', 'files, folders or patterns', ['captures']),
  )
    .option('--out <folder>', 'where the sheets go', 'reports')
    .option('--png', 'also a picture of 1920 × 1080')
    .addHelpText('after', after)
    .action(async (captures: string[], flags: ReportFlags, command: Command) => {
      refuseMeterForMany(captures, flags, command);
      await mkdir(flags.out, { recursive: true });
      const document = await emptyDocument();
      let names: ReadonlyMap<string, string> = new Map();
      const sheetFor = async (assay: Assay): Promise<string> => {
        const { file, voltage, current } = assay.result;
        const channel = flags.voltage === 'all' ? `-${(voltage ?? current)?.channel ?? ''}` : '';
        const path = join(flags.out, `${names.get(file)}${channel.replaceAll(/[^\p{L}\p{N}_-]+/gu, '_')}`);
        const svg = sheetSvg(document, assay);
        await writeWhole(`${path}.svg`, svg);
        if (flags.png) {
          const { renderPng } = await import('./renderPng.ts');
          await writeWhole(`${path}.png`, renderPng(svg));
        }
        return `${path}.svg`;
      };
      await runCaptures(captures, flags, sheetFor, (files) => {
        names = sheetNames(files);
      });
    });
}

/** jsdom takes half a second to load: only when a sheet is drawn. */
async function emptyDocument(): Promise<Document> {
  const { JSDOM } = await import('jsdom');
  return new JSDOM().window.document;
}
