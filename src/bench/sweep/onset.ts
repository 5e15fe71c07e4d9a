import type { Onset } from '../benchDocument.ts';

/** An onset that was not seen, and why. */
export function noOnset(reason: string): Onset {
  return { atW: { value: null, reason }, betweenW: null, shownBy: '' };
}

/**
 * An onset between two captures: straight between them to where the quantity crosses its threshold.
 *
 * @param from - load and quantity of the last capture before.
 * @param to - of the first after.
 * @param threshold - between the two quantities, else the nearer end is taken.
 * @returns the uncertainty reaches to the farther of the two loads: no capture says more.
 */
export function onsetBetween(
  from: readonly [loadW: number, quantity: number],
  to: readonly [loadW: number, quantity: number],
  threshold: number,
  shownBy: string,
): Onset {
  const [[fromW, before], [toW, after]] = [from, to];
  const share = after === before ? 0.5 : Math.min(1, Math.max(0, (threshold - before) / (after - before)));
  const atW = fromW + share * (toW - fromW);
  return {
    atW: { value: atW, uncertainty: Math.max(atW - fromW, toW - atW) },
    betweenW: [fromW, toW],
    shownBy,
  };
}
