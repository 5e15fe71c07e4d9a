import type { Figure } from '../../base/figure.ts';
import type { MeasureResult } from '../../verdict/measureDocument.ts';
import type { ComparedFigure } from './comparedFigures.ts';

/** In % of the fundamental, on one side at least: less changes nothing that anybody would see. */
const least = 0.5;
const most = 8;

/** The harmonics that matter on either side, largest first, of the voltage or else of the current. */
export function comparedHarmonics(
  a: MeasureResult,
  b: MeasureResult,
): readonly (readonly [ComparedFigure, ComparedFigure])[] {
  const [ofA, ofB] = [harmonicsOf(a), harmonicsOf(b)];
  const orders = [...ofA.keys()].filter((order) => order > 1 && ofB.has(order));
  const size = (order: number): number => Math.max(ofA.get(order)!.percent, ofB.get(order)!.percent);
  return orders
    .filter((order) => size(order) >= least)
    .sort((x, y) => size(y) - size(x))
    .slice(0, most)
    .map((order) => {
      const figure = (harmonic: Harmonic): ComparedFigure => ({
        key: `harmonics.${order}`,
        quantity: `harmonic ${order}`,
        unit: '%',
        figure: figureOf(harmonic),
        budget: null,
      });
      return [figure(ofA.get(order)!), figure(ofB.get(order)!)] as const;
    });
}

type Harmonic = NonNullable<MeasureResult['voltage']>['harmonics'][number] | CurrentHarmonic;
type CurrentHarmonic = NonNullable<MeasureResult['current']>['harmonics'][number];

function harmonicsOf({ voltage, current }: MeasureResult): ReadonlyMap<number, Harmonic> {
  const harmonics: readonly Harmonic[] = (voltage ?? current)?.harmonics ?? [];
  return new Map(harmonics.map((harmonic) => [harmonic.order, harmonic]));
}

function figureOf({ percent, uncertaintyPercent, notAbovePercent }: Harmonic): Figure {
  return {
    value: percent,
    uncertainty: uncertaintyPercent ?? 0,
    ...(notAbovePercent === undefined ? {} : { notAbove: notAbovePercent }),
  };
}
