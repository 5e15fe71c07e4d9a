import { asin, cos, exp, hypot, log } from '../../base/elementary.ts';
import { fourier, memoizeBySize, type Spectrum } from '../../signal/spectrum.ts';
import { type Component, contribution } from './component.ts';

/** Share of a normal distribution within two standard deviations. */
const COVERAGE = 0.9544997361036416;

/**
 * Half-width of the interval around zero that holds 95.45 % of the sum of independent, symmetric components.
 *
 * Their densities are convolved on a grid, so that a budget ruled by one rectangle gets its 1.65 u and not
 * 2 u, and a mean of few cycles its Student tail.
 *
 * @param components - contributions ≥ 0.
 * @returns in the figure's unit, ≥ 0; within 0.2 % of the exact half-width.
 * @see JCGM 101:2008, 5 to 7: propagation of distributions, here by convolution for a sum.
 */
export function coverageHalfWidth(components: readonly Component[]): number {
  const combined = hypot(...components.map(contribution));
  if (combined === 0) return 0;
  // Eight deviations each way in 512 cells of 0.03 u; what a Student tail has beyond is cut.
  const size = 512;
  const cell = (16 * combined) / size;
  // What is under a hundredth of the whole changes the shape of the sum by nothing that shows.
  const isAsNormal = (component: Component): boolean =>
    isNormal(component) || contribution(component) < 0.01 * combined;
  const shaped = components.filter((component) => !isAsNormal(component));
  if (shaped.length === 0) return 2 * combined;
  const asNormal = hypot(...components.filter(isAsNormal).map(contribution));
  const { spectrum, inverse } = fourier(size);
  const sum = shaped.map((component) => spectrum(density(component, size, cell))).reduce(product);
  return quantileOf(inverse(withNormal(sum, ((2 * Math.PI) / size) * (asNormal / cell))), cell);
}

function isNormal({ distribution, degreesOfFreedom = Number.POSITIVE_INFINITY }: Component): boolean {
  return (
    distribution === 'normal' || (distribution === 'student' && degreesOfFreedom === Number.POSITIVE_INFINITY)
  );
}

function product(a: Spectrum, b: Spectrum): Spectrum {
  const { length } = a.re;
  const re = new Float64Array(length);
  const im = new Float64Array(length);
  for (let k = 0; k < length; k++) {
    re[k] = a.re[k]! * b.re[k]! - a.im[k]! * b.im[k]!;
    im[k] = a.re[k]! * b.im[k]! + a.im[k]! * b.re[k]!;
  }
  return { re, im };
}

/**
 * A spectrum of densities with a normal one besides, whose own is e^(−(k·turn)²/2).
 *
 * @param turn - radians that one deviation takes from line to line.
 */
function withNormal({ re, im }: Spectrum, turn: number): Spectrum {
  const narrows = exp(-turn * turn);
  const [together, apart] = [Float64Array.from(re), Float64Array.from(im)];
  // From k² to (k + 1)² it is 2k + 1 more.
  let ratio = exp((-turn * turn) / 2);
  let line = 1;
  for (let k = 1; k < re.length; k++) {
    line *= ratio;
    ratio *= narrows;
    together[k]! *= line;
    apart[k]! *= line;
  }
  return { re: together, im: apart };
}

/**
 * Masses of the cells of a symmetric density, cell 0 centred on zero, the negative side wrapped to the end.
 *
 * @param massOf - of cell 0 to size/2.
 */
function symmetric(size: number, massOf: (index: number) => number): Float64Array {
  const masses = new Float64Array(size);
  for (let i = 0; i <= size / 2; i++) masses[i] = masses[(size - i) % size] = massOf(i);
  return masses;
}

/** A function at the borders of cells 0 to size/2: the first at −cell/2. */
function atBorders(size: number, cell: number, valueAt: (x: number) => number): Float64Array {
  const values = new Float64Array(size / 2 + 2);
  for (let i = 0; i < values.length; i++) values[i] = valueAt((i - 0.5) * cell);
  return values;
}

/** @param below - the share of the whole below x, less a half. */
function densityOfShare(size: number, cell: number, below: (x: number) => number): Float64Array {
  const borders = atBorders(size, cell, below);
  return symmetric(size, (i) => borders[i + 1]! - borders[i]!);
}

function density(component: Component, size: number, cell: number): Float64Array {
  const u = contribution(component);
  const clamp = (x: number): number => Math.max(-1, Math.min(1, x));
  if (component.distribution === 'rectangular') {
    const half = u * Math.sqrt(3);
    return densityOfShare(size, cell, (x) => clamp(x / half) / 2);
  }
  if (component.distribution === 'arcsine') {
    const amplitude = u * Math.SQRT2;
    return densityOfShare(size, cell, (x) => asin(clamp(x / amplitude)) / Math.PI);
  }
  if (component.distribution === 'phasor') {
    const largest = u * Math.sqrt(6);
    // Density arccosh(D/|x|)/(πD), integrated.
    return densityOfShare(size, cell, (x) => {
      const y = Math.min(1, Math.abs(x) / largest);
      return y === 0
        ? 0
        : (Math.sign(x) * (y * log((1 + Math.sqrt((1 - y) * (1 + y))) / y) + asin(y))) / Math.PI;
    });
  }
  // Student: u is the scale s/√n, so that U = t·u, as JCGM 100 has it, not the larger standard deviation.
  const degrees = component.degreesOfFreedom!;
  const whole = u * studentIntegral(degrees);
  return symmetric(size, (i) => {
    const x = (i * cell) / u;
    return (exp((-(degrees + 1) / 2) * log(1 + (x * x) / degrees)) * cell) / whole;
  });
}

/** ∫ (1 + x²/ν)^(−(ν+1)/2) dx over all x: with x = √ν·tan θ it is √ν·∫ cos^(ν−1) θ dθ, by the midpoint rule. */
const studentIntegral = memoizeBySize((degrees) => {
  // Of the half from 0 to π/2. Off by (π/1000)²/24 = 4e-7 where the cosine meets its end at an angle (ν = 2), and less above.
  const steps = 500;
  let sum = 0;
  for (let i = 0; i < steps; i++) sum += exp((degrees - 1) * log(cos(((i + 0.5) / steps) * (Math.PI / 2))));
  return Math.sqrt(degrees) * sum * (Math.PI / steps);
});

function quantileOf(masses: Float64Array, cell: number): number {
  let held = masses[0]!;
  for (let i = 1; i < masses.length / 2; i++) {
    const more = masses[i]! + masses[masses.length - i]!;
    if (held + more >= COVERAGE) return (i - 0.5 + (COVERAGE - held) / more) * cell;
    held += more;
  }
  return (masses.length / 2) * cell;
}
