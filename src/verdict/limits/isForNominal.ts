import type { Nominal } from '../measureDocument.ts';
import { apartRatio, mainsNominals, type ToldNominal } from '../nominal/mainsNominals.ts';

/** A told nominal of 220 V belongs with 230 V, one of 110 or 115 V with 120 V; 208 V belongs with none. */
const CLASS_REACH = 1.1;

/**
 * Whether limits for a class of outlet hold for this one.
 *
 * @param appliesTo - a class; absent: any outlet, known or not.
 */
export function isForNominal(appliesTo: ToldNominal | undefined, nominal: Nominal | null): boolean {
  if (appliesTo === undefined) return true;
  if (nominal === null || nominal.frequencyHz !== appliesTo.frequencyHz) return false;
  return appliesTo.voltageV === undefined || appliesTo.voltageV === voltageClassV(nominal);
}

function voltageClassV(nominal: Nominal): number | null {
  const apart = (voltageV: number) => apartRatio(nominal.voltageV, voltageV);
  const [nearest] = mainsNominals
    .filter(({ frequencyHz }) => frequencyHz === nominal.frequencyHz)
    .map(({ voltageV }) => voltageV)
    .sort((a, b) => apart(a) - apart(b));
  return nearest !== undefined && apart(nearest) <= CLASS_REACH ? nearest : null;
}
