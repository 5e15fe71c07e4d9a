import type { Worded } from '../../src/base/notice.ts';
import type { BenchPoint } from '../../src/bench/benchDocument.ts';

/** A point of a sweep: a pure sine of 120 V at no load, told, unless said. */
export function point(
  loadW: number | null,
  rmsV: number,
  more: Partial<Omit<Worded<BenchPoint>, 'crestFactor' | 'thdPercent'>> & {
    readonly crest?: number;
    readonly thd?: number;
  } = {},
): Worded<BenchPoint> {
  const { crest = Math.SQRT2, thd = 1, ...rest } = more;
  return {
    file: `${loadW}w.csv`,
    sha256: '0'.repeat(64),
    loadW: loadW === null ? { value: null, reason: 'not told' } : { value: loadW, uncertainty: 0 },
    loadFrom: loadW === null ? 'unknown' : 'told',
    currentA: loadW === null ? { value: null, reason: 'not told' } : { value: loadW / rmsV, uncertainty: 0 },
    currentFrom: loadW === null ? 'unknown' : 'told',
    rmsV: { value: rmsV, uncertainty: 4 },
    rmsScatterV: 0.02,
    frequencyHz: { value: 60, uncertainty: 0.003 },
    thdPercent: { value: thd, uncertainty: 0.2 },
    crestFactor: { value: crest, uncertainty: 0.01 },
    kind: 'pure sine',
    atTheEdge: false,
    overload: false,
    outcome: null,
    ...rest,
  };
}
