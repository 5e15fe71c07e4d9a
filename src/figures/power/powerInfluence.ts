import { type Component, contribution } from '../uncertainty/component.ts';
import type { PowerBasis } from './powerBasis.ts';

/** Something that may have moved the basis, and which way. */
export interface PowerInfluence {
  /** Its sensitivity is 1: it is passed on to each figure by `propagated`. */
  readonly component: Component;
  /** What one unit of the component adds to the basis; absent: nothing. */
  readonly perUnit: Partial<PowerBasis>;
}

/**
 * The components of one figure: each influence, with the sensitivity found by moving the basis by the
 * influence's own standard uncertainty, up and down.
 *
 * @param figure - the figure as a function of the basis.
 * @remarks The larger side counts: N and the power factor turn round at a resistive load, where half the
 * difference of the sides would be nothing.
 * @see JCGM 100:2008, 5.1.3, note 2.
 */
export function propagated(
  basis: PowerBasis,
  influences: readonly PowerInfluence[],
  figure: (basis: PowerBasis) => number,
): Component[] {
  const value = figure(basis);
  return influences
    .filter(({ component }) => contribution(component) > 0)
    .map(({ component, perUnit }) => {
      const step = component.standardUncertainty;
      const up = figure(moved(basis, perUnit, step)) - value;
      const down = figure(moved(basis, perUnit, -step)) - value;
      return { ...component, sensitivity: (Math.abs(up) >= Math.abs(down) ? up : -down) / step };
    });
}

function moved(basis: PowerBasis, perUnit: Partial<PowerBasis>, step: number): PowerBasis {
  const shifted = { ...basis };
  for (const key of Object.keys(perUnit) as (keyof PowerBasis)[]) {
    shifted[key] = basis[key] + step * perUnit[key]!;
  }
  return shifted;
}
