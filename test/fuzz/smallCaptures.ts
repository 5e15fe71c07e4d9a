import { createHash } from 'node:crypto';
import type { Assay } from '../../src/assay/assay.ts';
import { assayCapture } from '../../src/assay/assayCapture.ts';
import type { AssayOptions } from '../../src/assay/assayOptions.ts';
import { readCapture } from '../../src/read/readCapture.ts';
import { seededRandom } from './fuzzCount.ts';

/** Invented captures of a few cycles, each in a layout of its own. */
export const smallCaptures: Readonly<Record<string, string>> = {
  sine: lines('Time (s),CH1 (V)', 600, 2e-4, 60, (t, noise) => 170 * t.sine(1) + 5 * t.sine(3) + noise, ','),
  'head with settings': `Record Length,600\nSample Interval,1e-4\nSource,CH1\nVertical Units,V\n${lines(
    'TIME,CH1',
    600,
    1e-4,
    50,
    (t, noise) => 325 * t.sine(1) + 9 * t.sine(5) + noise,
    ',',
  )}`,
  'decimal comma': lines(
    'Zeit (ms);Spannung (V)',
    500,
    2e-4,
    50,
    (t, noise) => 320 * Math.max(-0.9, Math.min(0.9, t.sine(1))) + noise,
    ';',
    1e3,
  ).replaceAll('.', ','),
  'modified sine': lines(
    'Second\tVolt\n',
    500,
    2e-4,
    60,
    (t, noise) => 165 * (Math.abs(t.sine(1)) > 0.5 ? Math.sign(t.sine(1)) : 0) + noise,
    '\t',
  ),
  'voltage and current': lines(
    'Time(s),Voltage(V),Current(A)',
    500,
    2e-4,
    60,
    (t, noise) => 169 * t.sine(1) + noise,
    ',',
    1,
    (t, noise) => 3 * t.sine(1) + noise / 100,
  ),
};

interface Instant {
  /** Of the wave's phase, at an order. */
  readonly sine: (order: number) => number;
}
type Quantity = (at: Instant, noise: number) => number;

function lines(
  head: string,
  count: number,
  stepS: number,
  hertz: number,
  voltage: Quantity,
  delimiter: string,
  timeFactor = 1,
  current?: Quantity,
): string {
  const random = seededRandom(7);
  const rows = Array.from({ length: count }, (_, i) => {
    const t = i * stepS;
    const at: Instant = { sine: (order) => Math.sin(2 * Math.PI * order * hertz * t + 0.7 * order) };
    const noise = 2 * (random() - 0.5);
    return [
      (t * timeFactor).toFixed(6),
      voltage(at, noise).toFixed(2),
      ...(current === undefined ? [] : [current(at, noise).toFixed(4)]),
    ].join(delimiter);
  });
  return `${head.trimEnd()}\n${rows.join('\n')}\n`;
}

/** Read and measured as the command does it. */
export function assaysOf(
  bytes: Uint8Array,
  options: AssayOptions = {},
  file = 'small.csv',
): readonly Assay[] {
  const sha256 = createHash('sha256').update(bytes).digest('hex');
  return assayCapture(readCapture(bytes), { file, sha256 }, options);
}
