import type { Figure } from '../../base/figure.ts';
import type { Harmonic, WaveFigures } from '../../figures/waveFigures.ts';
import type { Nominal } from '../measureDocument.ts';
import type { HarmonicRow } from './limitTable.ts';
import { percentOfNominal } from './percentOfNominal.ts';
import type { RowFigure } from './rowFigure.ts';

/**
 * The harmonics worth a line of their own: the one that takes up most of its limit, then every other one
 * that lies outside its limit, by rising order.
 *
 * @returns empty where there are no harmonics, or the row needs a nominal and there is none.
 * @remarks Each harmonic carries its own uncertainty, or that of the THD where it has none: on the safe side.
 */
export function harmonicFigures(
  row: HarmonicRow,
  figures: WaveFigures,
  nominal: Nominal | null,
): readonly RowFigure[] {
  const limited = figures.harmonics.flatMap((harmonic) => {
    const { order } = harmonic;
    const max = row.limitPercent.get(order);
    const figure = inUnitOf(row, harmonic, figures, nominal);
    if (max === undefined || figure.value === null) return [];
    return [{ order, figure, max, share: figure.value / max }];
  });
  const [first, ...rest] = limited;
  if (!first) return [];
  const worst = rest.reduce((a, b) => (b.share > a.share ? b : a), first);
  return [worst, ...limited.filter((harmonic) => harmonic !== worst && harmonic.share > 1)].map(
    ({ order, figure, max }) => ({ quantity: `harmonic ${order} (${row.unit})`, figure, limit: { max } }),
  );
}

function inUnitOf(
  { unit }: HarmonicRow,
  { percent, uncertaintyPercent }: Harmonic,
  { thdPercent, fundamental }: WaveFigures,
  nominal: Nominal | null,
): Figure {
  if (thdPercent.value === null) return thdPercent;
  const figure = { value: percent, uncertainty: uncertaintyPercent ?? thdPercent.uncertainty };
  if (unit === '% of fundamental') return figure;
  if (nominal === null) return { value: null, reason: 'the nominal voltage is not known' };
  return percentOfNominal(figure, fundamental, nominal.voltageV);
}
