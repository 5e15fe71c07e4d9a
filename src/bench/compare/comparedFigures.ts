import type { CurrentFigures, MeasureResult, VoltageFigures } from '../../assay/measureDocument.ts';
import type { Figure } from '../../base/figure.ts';

/** A figure of a result, to be held against the same of another. */
export interface ComparedFigure {
  /** Where the result has it: `voltage.rmsV`. */
  readonly key: string;
  readonly quantity: string;
  readonly unit: string;
  readonly figure: Figure;
  /** The name that the budgets of the result's main channel have for it; null where they have none. */
  readonly budget: string | null;
}

type Listed = readonly [
  key: string,
  quantity: string,
  unit: string,
  figure: Figure | undefined,
  budget?: string | undefined,
];

/** Every figure of a result that can be compared, in the order in which a person asks; harmonics not among them. */
export function comparedFigures(result: MeasureResult): readonly ComparedFigure[] {
  const { voltage, current, power, input } = result;
  const listed: Listed[] = [
    ...(voltage === undefined ? [] : channelFigures('voltage', voltage, 'V', voltageKeys, true)),
    ...(current === undefined
      ? []
      : channelFigures('current', current, 'A', currentKeys, voltage === undefined)),
    ...(power === undefined
      ? []
      : ([
          ['power.activeW', 'active power', 'W', power.activeW],
          ['power.apparentVA', 'apparent power', 'VA', power.apparentVA],
          ['power.nonactiveVar', 'nonactive power', 'var', power.nonactiveVar],
          ['power.powerFactor', 'power factor', '', power.powerFactor],
          ['power.displacementPowerFactor', 'displacement power factor', '', power.displacementPowerFactor],
        ] satisfies Listed[])),
    ...(input === undefined
      ? []
      : ([
          ['input.activeW', 'DC input power', 'W', input.activeW],
          [
            'input.conversionEfficiencyPercent',
            'conversion efficiency',
            '%',
            input.conversionEfficiencyPercent,
          ],
        ] satisfies Listed[])),
  ];
  return listed.flatMap(([key, quantity, unit, figure, budget = null]) =>
    figure === undefined ? [] : [{ key, quantity, unit, figure, budget }],
  );
}

type ChannelKeys<F> = Readonly<
  Record<'rms' | 'mean' | 'peak' | 'trough' | 'fundamental' | 'edgeSlope', keyof F & string>
>;

const voltageKeys: ChannelKeys<VoltageFigures> = {
  rms: 'rmsV',
  mean: 'meanV',
  peak: 'peakV',
  trough: 'troughV',
  fundamental: 'fundamentalV',
  edgeSlope: 'edgeSlopeVPerUs',
};

const currentKeys: ChannelKeys<CurrentFigures> = {
  rms: 'rmsA',
  mean: 'meanA',
  peak: 'peakA',
  trough: 'troughA',
  fundamental: 'fundamentalA',
  edgeSlope: 'edgeSlopeAPerUs',
};

/** @param isMain - the channel that the budgets are of; the other's figures are named after its quantity. */
function channelFigures<F extends VoltageFigures | CurrentFigures>(
  channel: 'voltage' | 'current',
  figures: F,
  unit: 'V' | 'A',
  keys: ChannelKeys<F>,
  isMain: boolean,
): Listed[] {
  const of = isMain ? '' : `${channel} `;
  const row = (key: keyof F & string, quantity: string, inUnit: string, budget?: string): Listed => [
    `${channel}.${key}`,
    quantity,
    inUnit,
    figures[key] as Figure | undefined,
    isMain ? budget : undefined,
  ];
  return [
    row(keys.rms, `RMS ${channel}`, unit, 'RMS'),
    ...(isMain ? [row('frequencyHz', 'frequency', 'Hz', 'frequency')] : []),
    row('crestFactor', `${of}crest factor`, '', 'crest factor'),
    row('thdPercent', `${of}THD`, '%', 'THD'),
    // Without its budget: its scatter from capture to capture is more than the parts that one instrument leaves.
    row('thdNoisePercent', `${of}THD plus noise`, '%'),
    row('thdOfRmsPercent', `${of}THD of RMS`, '%'),
    row(keys.mean, `${of}mean (DC)`, unit, 'mean (DC)'),
    row(keys.fundamental, `${of}fundamental`, unit, 'fundamental'),
    row(keys.peak, `${of}peak`, unit, 'peak'),
    row(keys.trough, `${of}trough`, unit, 'trough'),
    row('formFactor', `${of}form factor`, '', 'form factor'),
    row('deviationFactorPercent', `${of}deviation factor`, '%', 'deviation factor'),
    row('dwellPercent', `${of}time at zero`, '%'),
    row(keys.edgeSlope, `${of}edge slope`, `${unit}/µs`),
  ];
}

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
