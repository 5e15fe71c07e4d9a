/** Uniform numbers in [0, 1) from a seed: a 32-bit counter through a mixing function; independent of the product's own. */
function uniformNumbers(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let word = Math.imul(state ^ (state >>> 15), state | 1);
    word ^= word + Math.imul(word ^ (word >>> 7), word | 61);
    return ((word ^ (word >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** Chance, in the forms that captures are drawn with. */
export interface Chance {
  readonly between: (low: number, high: number) => number;
  readonly whole: (low: number, high: number) => number;
  readonly pick: <T>(choices: readonly T[]) => T;
  /** Mean 0, standard deviation 1. */
  readonly normal: () => number;
}

export function chance(seed: number): Chance {
  const uniform = uniformNumbers(seed);
  const between = (low: number, high: number): number => low + (high - low) * uniform();
  return {
    between,
    whole: (low, high) => Math.floor(between(low, high + 1)),
    pick: (choices) => choices[Math.floor(uniform() * choices.length)]!,
    normal: () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform()),
  };
}

/** One channel as it truly is, and how the scope sees it. */
export interface Signal {
  readonly name: string;
  readonly unit: 'V' | 'A';
  /** At a true time in seconds. */
  readonly at: (timeS: number) => number;
  /** Largest size that the range must hold. */
  readonly peak: number;
  /** Standard deviation of noise, in the unit. */
  readonly noise: number;
}

/** The scope: errors drawn from what the tool assumes where nothing is told of it. */
export interface Scope {
  readonly sampleRateHz: number;
  readonly count: number;
  readonly bits: number;
  /** Share of its range that the peak fills. */
  readonly fill: number;
  readonly startS?: number;
  /** Samples kept: one in so many; those between are drawn by straight lines. Default 1. */
  readonly interpolated?: number;
  /** Decimals of the time stamps; default: as many as they need. */
  readonly timeDecimals?: number;
  /** False: gain, probe, offset, clock and distortion without error. */
  readonly errors?: boolean;
}

/**
 * The CSV that a scope would save. Gain ±3 %, probe ±2 %, offset ±1 % of what the record spans, time base ±50 ppm, distortion up to
 * 0.3 % of the peak, all half-widths: the instrument that README assumes.
 */
export function drawnCsv(signals: readonly Signal[], scope: Scope, { between, normal }: Chance): string {
  const { sampleRateHz, count, bits, fill, startS = 0, interpolated = 1, errors = true } = scope;
  const drawn = (half: number): number => (errors ? between(-half, half) : 0);
  const clock = 1 + drawn(50e-6);
  const columns = signals.map(({ at, peak, noise }) => {
    const gain = (1 + drawn(0.03)) * (1 + drawn(0.02));
    const range = peak / fill;
    let [high, low] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
    for (let i = 0; i < count; i++) {
      const value = at(startS + i / sampleRateHz);
      [high, low] = [Math.max(high, value), Math.min(low, value)];
    }
    const offset = drawn(0.01) * (high - low);
    const bend = drawn(0.003) * 4;
    const codes = 2 * range * 2 ** -bits;
    const seen = (i: number): number => {
      const value = at(startS + i / (sampleRateHz * clock));
      // A cubic bend of the transfer curve: a third harmonic of a quarter of it.
      const bent = gain * (value + (bend * value ** 3) / (peak * peak)) - gain * bend * value * 0.75;
      const code = Math.round((bent + offset + noise * normal()) / codes);
      return codes * Math.max(-(2 ** (bits - 1)), Math.min(2 ** (bits - 1) - 1, code));
    };
    const kept = Array.from({ length: Math.ceil(count / interpolated) + 1 }, (_, i) =>
      seen(i * interpolated),
    );
    const decimals = Math.max(0, 3 - Math.floor(Math.log10(codes)));
    return (i: number): string => {
      const [k, part] = [Math.floor(i / interpolated), (i % interpolated) / interpolated];
      return (kept[k]! + part * (kept[k + 1]! - kept[k]!)).toFixed(decimals);
    };
  });
  const timeDecimals = scope.timeDecimals ?? Math.ceil(Math.log10(sampleRateHz)) + 4;
  const rows = [`Time (s),${signals.map(({ name, unit }) => `${name} (${unit})`).join(',')}`];
  for (let i = 0; i < count; i++)
    rows.push(`${(startS + i / sampleRateHz).toFixed(timeDecimals)},${columns.map((c) => c(i)).join(',')}`);
  return `${rows.join('\n')}\n`;
}
