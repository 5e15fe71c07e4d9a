/** The unit that times of a span of so many seconds are read in. */
export interface TimeUnit {
  readonly name: 's' | 'ms' | 'µs';
  readonly seconds: number;
  /** That tell apart a thousandth of the span. */
  readonly decimals: number;
}

export function timeUnit(spanS: number): TimeUnit {
  const [name, seconds] =
    spanS >= 2 ? (['s', 1] as const) : spanS >= 2e-3 ? (['ms', 1e-3] as const) : (['µs', 1e-6] as const);
  const exponent = Number((spanS / seconds).toExponential().split('e')[1]);
  return { name, seconds, decimals: Math.max(0, 3 - exponent) };
}

/** "12.30 ms", with the true minus sign. */
export function timeText(timeS: number, { name, seconds, decimals }: TimeUnit): string {
  return `${(timeS / seconds).toFixed(decimals).replace('-', '−')}\u00a0${name}`;
}
