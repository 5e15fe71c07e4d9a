import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { JSDOM } from 'jsdom';
import type { AssayOptions } from '../../src/index.ts';
import {
  type Assay,
  assayCapture,
  captureEvidence,
  cardEvidence,
  compareCaptures,
  type Evidence,
  readCapture,
  readEvidence,
  sealedSheet,
} from '../../src/index.ts';
import { worded } from '../../src/words/worded.ts';

const press = {
  document: new JSDOM().window.document,
  sha256: (text: string): string => createHash('sha256').update(text).digest('hex'),
  typeface: [],
};

/** Every text on a sheet that comes from a capture or a person. */
export interface OutsideTexts {
  readonly file?: string;
  readonly channel?: string;
  readonly label?: string;
  readonly load?: string;
}

export const captureFiles: readonly string[] = readdirSync('captures').filter((name) =>
  name.endsWith('.csv'),
);

/** Assays of a demonstration capture, read once. */
const assayed = new Map<string, readonly Assay[]>();
export function assaysOf(file: string, options: AssayOptions = {}): readonly Assay[] {
  const key = file + JSON.stringify(options);
  const known = assayed.get(key);
  if (known !== undefined) return known;
  const bytes = readFileSync(join('captures', file));
  const sha256 = createHash('sha256').update(bytes).digest('hex');
  const assays = assayCapture(readCapture(bytes), { file: `captures/${file}`, sha256 }, options);
  assayed.set(key, assays);
  return assays;
}

/** Two assays over each other, with other texts from outside. */
export function overlaySheet(a: Assay, b: Assay, texts: OutsideTexts = {}): string {
  const [left, right] = [renamed(a, texts), renamed(b, texts)];
  return sealedSheet(press, {
    ...{ schema: 'sineassay/sheet@1', program: '0.0.0', picture: 'overlay', basis: 'results' },
    result: worded(compareCaptures({ ...left, budgets: null }, { ...right, budgets: null })),
    sides: [captureEvidence(left, 'wave', {}, '0.0.0'), captureEvidence(right, 'wave', {}, '0.0.0')],
  });
}

/** The sheets and cards of an assay with other texts from outside. */
export function sheetsOf(assay: Assay, texts: OutsideTexts = {}): readonly string[] {
  const shown = renamed(assay, texts);
  // The dark card has the places of the light one: once is enough.
  const themes = Object.keys(texts).length === 0 ? (['light', 'dark'] as const) : (['light'] as const);
  const pictures = assay.dynamics === null ? (['wave'] as const) : (['wave', 'changes'] as const);
  return [
    ...pictures.map((picture) => sealedSheet(press, captureEvidence(shown, picture, {}, '0.0.0'))),
    ...themes.map((theme) => sealedSheet(press, cardEvidence(shown, theme, {}, '0.0.0'))),
  ];
}

function renamed(assay: Assay, texts: OutsideTexts): Assay {
  const { channel, ...others } = texts;
  const { result } = assay;
  const told = {
    ...result,
    ...others,
    capture: {
      ...result.capture,
      channels: result.capture.channels.map((one) => ({ ...one, name: channel ?? one.name })),
    },
    ...(result.voltage === undefined || channel === undefined
      ? {}
      : { voltage: { ...result.voltage, channel } }),
    ...(result.current === undefined || channel === undefined
      ? {}
      : { current: { ...result.current, channel } }),
  };
  return { ...assay, result: told };
}

/** The demonstration's sheets of several captures, with another label and name for every unit. */
export function benchSheets(label?: string): readonly string[] {
  return readdirSync(join('reports', 'bench'))
    .filter((name) => name.endsWith('.svg'))
    .map((name) => {
      const { evidence: sealed } = readEvidence(readFileSync(join('reports', 'bench', name), 'utf8'));
      const { resultSha256: _, evidenceSha256: __, pictureSha256: ___, ...evidence } = sealed;
      return sealedSheet(press, label === undefined ? evidence : relabelled(evidence, label));
    });
}

function relabelled(evidence: Evidence, label: string): Evidence {
  if (evidence.picture === 'sweep') {
    const points = evidence.result.points.map((point) => ({ ...point, file: label, note: label }));
    return { ...evidence, result: { ...evidence.result, name: label, label, points } };
  }
  if (evidence.picture !== 'comparison') return evidence;
  const units = evidence.result.units.map((unit) => ({ ...unit, name: label, label }));
  return { ...evidence, result: { ...evidence.result, units } };
}
