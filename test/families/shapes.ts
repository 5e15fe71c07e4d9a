/** One cycle of a periodic wave: volts at a phase of 0 to 1 of the cycle. */
export type Shape = (phase: number) => number;

/** Points of one cycle that truths are taken from: between the edges of what is drawn here. */
const POINTS = 1 << 14;

/** What a shape's figures truly are, by sums over one finely drawn cycle. */
export interface ShapeTruth {
  readonly rms: number;
  readonly mean: number;
  readonly crestFactor: number;
  readonly formFactor: number;
  readonly fundamental: number;
  /** THD to an order, %. */
  readonly thdPercent: (orders: number) => number;
}

/** RMS, crest and form factor by their definitions, harmonics by a direct Fourier sum. */
export function shapeTruth(shape: Shape, highestOrder = 50): ShapeTruth {
  const values = Float64Array.from({ length: POINTS }, (_, i) => shape((i + 0.5) / POINTS));
  let [squares, sum, sizes, peak] = [0, 0, 0, 0];
  for (const value of values) {
    squares += value * value;
    sum += value;
    sizes += Math.abs(value);
    peak = Math.max(peak, Math.abs(value));
  }
  const rms = Math.sqrt(squares / POINTS);
  const harmonics = Array.from({ length: highestOrder }, (_, i) => {
    const step = (2 * Math.PI * (i + 1)) / POINTS;
    let [re, im] = [0, 0];
    for (let k = 0; k < POINTS; k++) {
      re += values[k]! * Math.cos(step * (k + 0.5));
      im += values[k]! * Math.sin(step * (k + 0.5));
    }
    return (Math.SQRT2 * Math.hypot(re, im)) / POINTS;
  });
  const fundamental = harmonics[0]!;
  return {
    rms,
    mean: sum / POINTS,
    crestFactor: peak / rms,
    formFactor: (rms * POINTS) / sizes,
    fundamental,
    thdPercent: (orders) => (100 * Math.hypot(...harmonics.slice(1, orders))) / fundamental,
  };
}

/** A sine with harmonics; `percent` of the fundamental. */
export function harmonicSine(
  rms: number,
  harmonics: readonly { readonly order: number; readonly percent: number; readonly phase: number }[] = [],
): Shape {
  return (phase) => {
    let value = Math.sin(2 * Math.PI * phase);
    for (const h of harmonics) value += (h.percent / 100) * Math.sin(2 * Math.PI * h.order * phase + h.phase);
    return Math.SQRT2 * rms * value;
  };
}

/** Three levels with rest at zero, each half cycle's pulse in its middle; `duty` 1: a square wave. */
export function threeLevel(peak: number, duty: number): Shape {
  return (phase) => {
    const inHalf = (phase % 0.5) * 2;
    if (Math.abs(inHalf - 0.5) > duty / 2) return 0;
    return phase % 1 < 0.5 ? peak : -peak;
  };
}

/**
 * The same behind a low-pass of second order, by its Fourier series: b_n = 4 V / (nπ) · sin(nπ·duty/2)·sin(nπ/2), each
 * through H = 1 / (1 − r² + 2jζr), r = n·f/f0.
 */
export function ringingThreeLevel(peak: number, duty: number, cornerRatio: number, damping: number): Shape {
  const table = new Float64Array(POINTS);
  const highest = Math.ceil(Math.max(200, 30 * cornerRatio));
  for (let n = 1; n <= highest; n += 2) {
    const size =
      ((4 * peak) / (n * Math.PI)) * Math.sin((n * Math.PI * duty) / 2) * Math.sin((n * Math.PI) / 2);
    const r = n / cornerRatio;
    const [re, im] = [1 - r * r, 2 * damping * r];
    const gain = size / Math.hypot(re, im);
    const lag = Math.atan2(im, re);
    for (let k = 0; k < POINTS; k++) table[k]! += gain * Math.sin((2 * Math.PI * n * k) / POINTS - lag);
  }
  return (phase) => {
    const at = (((phase % 1) + 1) % 1) * POINTS;
    const i = Math.floor(at);
    return table[i]! + (at - i) * (table[(i + 1) % POINTS]! - table[i]!);
  };
}

/** A sine whose half cycles begin late (leading) or end early (trailing), as a dimmer's do. */
export function cutSine(rms: number, edge: 'leading' | 'trailing', degrees: number): Shape {
  return (phase) => {
    const inHalf = (phase % 0.5) * 360;
    const isOn = edge === 'leading' ? inHalf >= degrees : inHalf < degrees;
    return isOn ? Math.SQRT2 * rms * Math.sin(2 * Math.PI * phase) : 0;
  };
}

/** A sine rounded to the nearest of 2k + 1 even levels. */
export function staircase(rms: number, levels: number): Shape {
  const k = (levels - 1) / 2;
  return (phase) => ((Math.SQRT2 * rms) / k) * Math.round((k + 0.49) * Math.sin(2 * Math.PI * phase));
}

/** Unfiltered pulses of a triangular carrier against a sine: two levels, or three. */
export function pulseWidth(peak: number, levels: 2 | 3, carrierRatio: number, depth: number): Shape {
  const triangle = (x: number): number => 4 * Math.abs(((((x + 0.25) % 1) + 1) % 1) - 0.5) - 1;
  return (phase) => {
    const wanted = depth * Math.sin(2 * Math.PI * phase);
    if (levels === 2) return wanted > triangle(carrierRatio * phase) ? peak : -peak;
    const size = Math.abs(wanted) > (triangle(carrierRatio * phase) + 1) / 2 ? peak : 0;
    return wanted < 0 ? -size : size;
  };
}
