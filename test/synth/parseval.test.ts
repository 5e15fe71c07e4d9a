import { describe, expect, test } from 'vitest';
import { shapes } from './shapes.ts';

/** Sum of the squared jumps of a cycle: what is left of the squared differences of neighbours close together. */
function sumOfSquaredJumps(at: (phase: number) => number): number {
  const parts = 50_000;
  let sum = 0;
  for (let i = 0; i < parts; i++) sum += (at((i + 1) / parts) - at(i / parts)) ** 2;
  return sum;
}

describe.each(shapes)('%s: Parseval', (name, { at, truth }) => {
  const orders = name === 'modified sine, ringing' ? 300 : 2000;

  test(`rms² = mean² + Σ harmonic², to order ${orders}`, () => {
    let squares = truth.mean ** 2;
    for (let order = 1; order <= orders; order++) squares += truth.harmonic(order).rms ** 2;
    // A jump J has the amplitude J/(πn) at order n. Over many orders the phases of several average out, so
    // the orders left out hold ΣJ²/2 · Σ 1/(πn)² = ΣJ²/(2π² orders); twice that is allowed. An edge of e
    // cycles has amplitudes under J/(π²n²e) instead: less than 1e-8 in all past 2000, 1e-5 past 300.
    const leftOut = sumOfSquaredJumps(at) / (Math.PI ** 2 * orders) + (orders < 2000 ? 1e-5 : 1e-8);
    expect(truth.rms ** 2 - squares).toBeGreaterThan(-1e-10);
    expect(truth.rms ** 2 - squares).toBeLessThan(leftOut);
  });
});
