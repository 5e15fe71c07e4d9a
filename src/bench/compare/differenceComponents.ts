import type { Component } from '../../figures/uncertainty/component.ts';

/**
 * What one scope with its probes does to every capture alike, as long as nobody turns a knob: an unknown
 * constant. Noise, rounding, and edges between samples are drawn anew for each capture.
 *
 * @remarks The scope's own distortion is left out: it follows the height and the shape of the wave, so that two
 * waves may be distorted differently.
 */
const SHARED =
  /^(vertical gain|probe ratio|vertical offset|time base|bandwidth|accuracy of the meter|time between the two probes)( of the (first|second) channel)?$/;

/** True of an influence that two captures through one instrument share. */
export function isShared(source: string): boolean {
  return SHARED.test(source);
}

/**
 * What the difference b − a is uncertain by.
 *
 * Independent influences of both sides all count. One that is the same error in both counts once, with what it
 * does to b less what it does to a: u = |c_b·u_b − c_a·u_a|, so that a gain counts in proportion to the
 * difference, and an offset of the mean not at all.
 *
 * @param a - of one figure; likewise `b`, same unit.
 * @param sameInstrument - true: influences that an instrument does to every capture alike are one in both.
 * @returns components of the difference, in the figure's unit.
 * @see JCGM 100:2008, 5.2.2, equation (16), with correlation coefficients 0 and 1; F.1.2.3: an influence common
 * to both inputs is what correlates them.
 */
export function differenceComponents(
  a: readonly Component[],
  b: readonly Component[],
  sameInstrument: boolean,
): readonly Component[] {
  const side = (components: readonly Component[], sign: 1 | -1, name: 'A' | 'B'): readonly Component[] =>
    components.map((component) => {
      const isOne = sameInstrument && isShared(component.source);
      return {
        ...component,
        source: isOne ? component.source : `${component.source}, ${name}`,
        // In the figure's own unit: what is assumed of one instrument may differ between its two captures.
        standardUncertainty: 1,
        unit: '',
        sensitivity: sign * component.sensitivity * component.standardUncertainty,
      };
    });
  return [...side(b, 1, 'B'), ...side(a, -1, 'A')];
}
