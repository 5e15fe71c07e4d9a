import type { Figure } from '../../base/figure.ts';
import type { EnergyAssay, EnergyResult } from '../../energy/energyDocument.ts';
import { worded } from '../worded.ts';
import { layoutWords } from './layoutWords.ts';

/** A log's result as documents carry it: notices with their messages, the layout as a phrase. */
export function wordedEnergy(result: EnergyAssay<Figure<string>>): EnergyResult {
  const { log, ...rest } = worded(result);
  return { ...rest, log: { ...log, layout: layoutWords(result.log.layout) } };
}
