import type { Assay } from '../../src/assay/assay.ts';
import { completeOptions, type ToldOptions } from '../../src/assay/assayOptions.ts';
import { benchUnit } from '../../src/bench/benchUnit.ts';
import { compareCaptures } from '../../src/bench/compare/compareCaptures.ts';
import { compareUnits } from '../../src/bench/compareUnits.ts';
import type { CarriedUnit, Evidence } from '../../src/draw/evidence.ts';
import { parseClaim } from '../../src/judge/claims/parseClaim.ts';
import {
  captureEvidence,
  cardEvidence,
  carryOptions,
  overlayEvidence,
} from '../../src/publish/evidence/captureEvidence.ts';
import { worded } from '../../src/words/worded.ts';
import { assaysOf, smallCaptures } from './smallCaptures.ts';

export const program = '9.9.9';
/** Something of each kind that may be told. */
const options: ToldOptions = completeOptions({
  ...{ label: 'Unit a', load: '300 W', voltage: 'CH1', orders: 40, sampleRateHz: 5000 },
  scales: [{ channel: null, factor: 1 }],
  inverted: [],
  nominal: { voltageV: 120, frequencyHz: 60 },
  skews: [{ channel: 'CH1', seconds: 0 }],
  instrument: { bits: 8, gainPercent: 2, offsetV: null },
  meter: { readingV: 120, dcCoupled: false },
  claims: [parseClaim('pure sine'), parseClaim('120 V ±5 %')],
});
const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);

/** Half a second at 60 Hz; the voltage falls by 6 % at the middle. */
const step = `Time,CH1\n${Array.from({ length: 1500 }, (_, i) => {
  const t = i / 3000;
  const volts = 170 * (t < 0.25 ? 1 : 0.94) * Math.sin(2 * Math.PI * 60 * t);
  return `${t.toFixed(6)},${volts.toFixed(2)}`;
}).join('\n')}\n`;

const one = (name: string): Assay => assaysOf(bytesOf(smallCaptures[name]!), {}, `${name}.csv`)[0]!;
const [sine, modified, powered] = [one('sine'), one('modified sine'), one('voltage and current')];
const changing = assaysOf(bytesOf(step), { load: '300 W' }, 'step.csv')[0]!;

/** Captures that stand behind the sheets, as they are measured again. */
export const measuredAgain: readonly (readonly Assay[])[] = [[sine], [modified], [powered], [changing]];

const common = { schema: 'sineassay/sheet@1', program } as const;
const told = (name: string, assays: readonly Assay[]): CarriedUnit => ({
  ...{ name, label: `Unit ${name}`, rule: 'guarded', energy: [], claims: [], steps: [], transfers: [] },
  sweep: assays.map(({ result: { file, sha256 } }, i) => ({
    ...{ file, sha256, options: carryOptions({}) },
    told: { loadW: 300 * i },
  })),
});
const unitOf = (name: string, assays: readonly Assay[]) =>
  worded(
    benchUnit({
      ...{ name, label: `Unit ${name}`, claims: [], rule: 'guarded', steps: [], transfers: [], energy: [] },
      sweep: assays.map(({ result, budgets }, i) => ({ result, budgets, told: { loadW: 300 * i } })),
    }),
  );
const units = [unitOf('a', [sine, modified]), unitOf('b', [powered])];

/** One of each picture, of invented captures. */
export const smallSheets: Readonly<Record<string, Evidence>> = {
  wave: captureEvidence(sine, 'wave', options, program),
  'wave with a current': captureEvidence(powered, 'wave', {}, program),
  changes: captureEvidence(changing, 'changes', { load: '300 W' }, program),
  card: cardEvidence(modified, 'dark', {}, program),
  overlay: overlayEvidence(
    [captureEvidence(sine, 'wave', {}, program), captureEvidence(modified, 'wave', {}, program)],
    worded(compareCaptures(sine, modified)),
    'budgets',
    program,
  ),
  sweep: { ...common, picture: 'sweep', told: [told('a', [sine, modified])], result: units[0]! },
  comparison: {
    ...common,
    picture: 'comparison',
    told: [told('a', [sine, modified]), told('b', [powered])],
    result: { schema: 'sineassay/bench@1', units, comparison: worded(compareUnits(units)), failures: [] },
  },
};
