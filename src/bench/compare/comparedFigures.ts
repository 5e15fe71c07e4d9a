import { figureAt } from '../../assay/channelFigures.ts';
import type {
  CurrentFigures,
  InputDocument,
  PowerDocument,
  VoltageFigures,
} from '../../assay/measureDocument.ts';
import type { Figure } from '../../base/figure.ts';
import { type FigureName, figuresIn } from '../../measure/figures.ts';
import type { ComparedResult } from './compareDocument.ts';

/** A figure of a result, to be held against the same of another. */
export interface ComparedFigure {
  /** Where the result has it: `voltage.rmsV`. */
  readonly key: string;
  readonly quantity: string;
  readonly unit: string;
  readonly figure: Figure;
  /** Which budget of the result's main channel is its own; null where none is. */
  readonly budget: FigureName | null;
}

/** Every figure of a result that can be compared, in the order in which a person asks; harmonics not among them. */
export function comparedFigures(result: ComparedResult): readonly ComparedFigure[] {
  const { voltage, current, power, input } = result;
  return [
    ...(voltage === undefined ? [] : channelFigures('voltage', voltage, true)),
    ...(current === undefined ? [] : channelFigures('current', current, voltage === undefined)),
    ...(power === undefined ? [] : powerFigures(power)),
    ...(input === undefined ? [] : inputFigures(input)),
  ].flatMap(({ figure, ...rest }) => (figure === undefined ? [] : [{ ...rest, figure }]));
}

/** Of a document that may be an earlier version's. */
type Listed = Omit<ComparedFigure, 'figure'> & { readonly figure: Figure | undefined };

function powerFigures(power: PowerDocument): Listed[] {
  return [
    unbudgeted('power.activeW', 'active power', 'W', power.activeW),
    unbudgeted('power.apparentVA', 'apparent power', 'VA', power.apparentVA),
    unbudgeted('power.nonactiveVar', 'nonactive power', 'var', power.nonactiveVar),
    unbudgeted('power.powerFactor', 'power factor', '', power.powerFactor),
    unbudgeted(
      'power.displacementPowerFactor',
      'displacement power factor',
      '',
      power.displacementPowerFactor,
    ),
  ];
}

function inputFigures({ activeW, conversionEfficiencyPercent: efficiency }: InputDocument): Listed[] {
  return [
    unbudgeted('input.activeW', 'DC input power', 'W', activeW),
    unbudgeted('input.conversionEfficiencyPercent', 'conversion efficiency', '%', efficiency),
  ];
}

function unbudgeted(key: string, quantity: string, unit: string, figure: Figure | undefined): Listed {
  return { key, quantity, unit, figure, budget: null };
}

/** @param isMain - the channel that the budgets are of; the other's figures are named after its quantity. */
function channelFigures(
  quantity: 'voltage' | 'current',
  section: VoltageFigures | CurrentFigures,
  isMain: boolean,
): Listed[] {
  return figuresIn(quantity === 'voltage' ? 'V' : 'A', 'compared')
    .filter(({ ofBoth }) => isMain || !ofBoth)
    .map(({ figure, key, unit, name, comparedAs = isMain ? name : `${quantity} ${name}`, ...entry }) => ({
      key: `${quantity}.${key}`,
      quantity: comparedAs.replace('{quantity}', quantity),
      unit,
      figure: figureAt(section, key),
      budget: isMain && entry.budget !== undefined && !entry.scatters ? figure : null,
    }));
}

/** In % of the fundamental, on one side at least: less changes nothing that anybody would see. */
const least = 0.5;
const most = 8;

/** The harmonics that matter on either side, largest first, of the voltage or else of the current. */
export function comparedHarmonics(
  a: ComparedResult,
  b: ComparedResult,
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

type Harmonic = NonNullable<ComparedResult['voltage']>['harmonics'][number] | CurrentHarmonic;
type CurrentHarmonic = NonNullable<ComparedResult['current']>['harmonics'][number];

function harmonicsOf({ voltage, current }: ComparedResult): ReadonlyMap<number, Harmonic> {
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
