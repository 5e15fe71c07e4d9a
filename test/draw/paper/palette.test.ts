import { lab, rgb } from 'd3';
import { describe, expect, test } from 'vitest';
import { darkPalette, palette } from '../../../src/draw/paper/palette.ts';

/**
 * What a dichromat sees, in linear RGB, row by row: G. M. Machado, M. M. Oliveira, L. A. F. Fernandes, "A
 * Physiologically-based Model for Simulation of Color Vision Deficiency", IEEE TVCG 15(6), 2009, severity 1.0; from
 * memory. Each row must leave white white.
 */
const visions: Readonly<Record<string, readonly number[]>> = {
  ordinary: [1, 0, 0, 0, 1, 0, 0, 0, 1],
  protanopia: [0.152286, 1.052583, -0.204868, 0.114503, 0.786281, 0.099216, -0.003882, -0.048116, 1.051998],
  deuteranopia: [0.367322, 0.860646, -0.227968, 0.280085, 0.672501, 0.047413, -0.01182, 0.04294, 0.968881],
  tritanopia: [1.255528, -0.076749, -0.178779, -0.078411, 0.930809, 0.147602, 0.004733, 0.691367, 0.3039],
};

type Ink = keyof typeof palette;

/** IEC 61966-2-1 (sRGB). */
const linear = (byte: number): number => {
  const v = byte / 255;
  return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
};
const encoded = (v: number): number =>
  255 * (v <= 0.0031308 ? 12.92 * v : 1.055 * Math.min(1, v) ** (1 / 2.4) - 0.055);
const channels = (colour: string): number[] => {
  const { r, g, b } = rgb(colour);
  return [r, g, b].map(linear);
};

function seen(colour: string, matrix: readonly number[]) {
  const [r, g, b] = channels(colour) as [number, number, number];
  const row = (i: number): number =>
    encoded(Math.max(0, matrix[i]! * r + matrix[i + 1]! * g + matrix[i + 2]! * b));
  return lab(rgb(row(0), row(3), row(6)));
}

/** Inks that stand for different things within one panel. */
const meeting: readonly (readonly [Ink, Ink])[] = [
  ['wave', 'ideal'],
  ['wave', 'idealText'],
  ['wave', 'outside'],
  ['bar', 'outside'],
  ['idealText', 'outside'],
  ['ink', 'outside'],
  ['soft', 'outside'],
];

test('the matrices leave every grey as it is', () => {
  for (const matrix of Object.values(visions)) {
    for (const i of [0, 3, 6]) {
      expect(Math.abs(matrix[i]! + matrix[i + 1]! + matrix[i + 2]! - 1)).toBeLessThan(2e-6);
    }
  }
});

describe.each([
  ['light', palette],
  ['dark', darkPalette],
] as const)('the %s inks', (_, inks) => {
  // CIE 1976 colour difference; 2.3 is just noticed side by side (Mahy et al. 1994, from memory). Six times that for
  // thin lines and small type: common practice, no source.
  describe.each(Object.entries(visions))('with %s', (_vision, matrix) => {
    test.each(meeting)('%s and %s are told apart', (a, b) => {
      const [first, second] = [seen(inks[a], matrix), seen(inks[b], matrix)];
      const difference = Math.hypot(first.l - second.l, first.a - second.a, first.b - second.b);
      expect(difference).toBeGreaterThan(6 * 2.3);
    });
  });

  test('in a grey print the wave stands off its ideal, and a bar outside its limit off one inside', () => {
    const lightness = (ink: Ink): number => lab(inks[ink]).l;
    expect(Math.abs(lightness('ideal') - lightness('wave'))).toBeGreaterThan(25);
    expect(Math.abs(lightness('bar') - lightness('outside'))).toBeGreaterThan(25);
  });

  test.each(['ink', 'soft', 'wave', 'idealText', 'outside'] as const)(
    'text in %s has the contrast of WCAG 2.2, 1.4.3, on the paper',
    (ink) => {
      const luminance = (name: Ink): number => {
        const [r, g, b] = channels(inks[name]) as [number, number, number];
        return 0.2126 * r + 0.7152 * g + 0.0722 * b;
      };
      const [one, other] = [luminance('paper') + 0.05, luminance(ink) + 0.05];
      expect(Math.max(one, other) / Math.min(one, other)).toBeGreaterThan(4.5);
    },
  );
});
