import fc from 'fast-check';
import { expect, it } from 'vitest';
import { spreadOut } from '../../../src/draw/paper/page.ts';

const wishes = fc.array(fc.double({ min: 0, max: 300, noNaN: true }), { maxLength: 8 });

it('leaves alone what is far enough apart', () => {
  expect(spreadOut([200, 20, 100], 17, [0, 300])).toEqual([200, 20, 100]);
});

it('moves what is too near to the distance, upwards from the end of the room', () => {
  expect(spreadOut([295, 300], 17, [0, 300])).toEqual([283, 300]);
  expect(spreadOut([0, 0, 0], 17, [0, 300])).toEqual([0, 17, 34]);
});

it('keeps distance and bounds wherever there is room for all', () => {
  fc.assert(
    fc.property(wishes, (wished) => {
      const places = spreadOut(wished, 17, [0, 300]);
      const sorted = [...places].sort((a, b) => a - b);
      // Sums of a few 17s near 300: exact to a billionth.
      sorted.slice(1).forEach((place, i) => {
        expect(place - sorted[i]!).toBeGreaterThanOrEqual(17 - 1e-9);
      });
      for (const place of places) {
        expect(place).toBeGreaterThanOrEqual(0);
        expect(place).toBeLessThanOrEqual(300 + 1e-9);
      }
    }),
  );
});

it('keeps the order of the wishes', () => {
  fc.assert(
    fc.property(wishes, (wished) => {
      const places = spreadOut(wished, 17, [0, 300]);
      wished.forEach((a, i) => {
        wished.forEach((b, k) => {
          if (a < b) expect(places[i]!).toBeLessThan(places[k]!);
        });
      });
    }),
  );
});
