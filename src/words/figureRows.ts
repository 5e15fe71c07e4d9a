import { figureAt } from '../assay/channelFigures.ts';
import type { CurrentFigures, MeasureResult, VoltageFigures } from '../assay/measureDocument.ts';
import type { Figure } from '../base/figure.ts';
import { type ChannelUnit, type DrawnFigure, type EachFigure, figuresIn } from '../measure/figures.ts';
import { figureText } from './quantities.ts';
import { reasonText } from './reasons.ts';

/**
 * Every figure of a channel, in the order of the catalogue's list.
 *
 * @param namesOrder - say up to which order distortion counts; a table of several captures can't, for it differs.
 */
export function figureRows(
  section: VoltageFigures | CurrentFigures,
  channelUnit: ChannelUnit,
  namesOrder = true,
): NamedFigure[] {
  return figuresIn(channelUnit, 'listed').flatMap(({ key, name, listedAs = name, toOrder, unit }) => {
    const figure = figureAt(section, key);
    if (figure === undefined) return [];
    const order = toOrder && namesOrder ? `, to order ${section.thdOrders}` : '';
    return [[listedAs + order, figure, unit] satisfies NamedFigure];
  });
}

/**
 * The four main figures in two rows of two, in columns, and what the ± means where a line has room for it:
 *
 *     RMS voltage  119.8 ± 0.9 V   frequency 59.997 ± 0.003 Hz
 *     crest factor 1.413 ± 0.006   THD       2.1 ± 0.4 %  (about 95 % sure)
 *
 * @param width - characters a line.
 */
export function figureColumns(figures: MainFigures, width: number): readonly [string, string] {
  const rmsName = figures.unit === 'V' ? 'RMS voltage' : 'RMS current';
  const rms = figureText(figures.rms, figures.unit);
  const crest = figureText(figures.crestFactor, '');
  const column = Math.max(rms.length, crest.length);
  const frequency = figureText(figures.frequencyHz, 'Hz');
  const thd = figureText(figures.thdPercent, '%');
  const second = `crest factor ${crest.padEnd(column)}   THD       ${thd}`;
  const sure = '  (about 95 % sure)';
  return [
    `${rmsName.padEnd(13)}${rms.padEnd(column)}   frequency ${frequency}`,
    second.length + sure.length <= width ? second + sure : second,
  ];
}

/** The figures that a sheet and the terminal show, for volts and amperes alike. */
export interface MainFigures extends Pick<EachFigure<Figure>, Exclude<DrawnFigure, keyof MeterFigures>> {
  readonly unit: ChannelUnit;
  readonly channel: string;
  readonly spanS: readonly [number, number];
  readonly cyclesUsed: number;
  readonly thdOrders: number;
  readonly harmonics: readonly { readonly order: number; readonly percent: number }[];
  /** Null for a current. */
  readonly meter: MeterFigures | null;
}

/** What a true-RMS meter and an average-responding one show on their AC ranges. */
type MeterFigures = Pick<EachFigure<Figure>, 'acRms' | 'averageResponding'>;

/** The voltage's figures, else the current's; null for a result that has neither. */
export function mainFigures({ voltage, current }: MeasureResult): MainFigures | null {
  const unit = voltage === undefined ? 'A' : 'V';
  const section = voltage ?? current;
  if (section === undefined) return null;
  const drawn = Object.fromEntries(
    figuresIn(unit).flatMap(({ figure, key, drawn }) => (drawn ? [[figure, figureAt(section, key)]] : [])),
  ) as Pick<EachFigure<Figure>, DrawnFigure>;
  return { ...section, ...drawn, unit, meter: unit === 'V' ? drawn : null };
}

/** The figures by which a capture is known, four or five; none for a result without voltage and current. */
export function headlineFigures(result: MeasureResult): NamedFigure[] {
  const figures = mainFigures(result);
  if (figures === null) return [];
  const { unit, rms, frequencyHz, crestFactor, thdPercent } = figures;
  return [
    [unit === 'V' ? 'RMS voltage' : 'RMS current', rms, unit],
    ['Frequency', frequencyHz, 'Hz'],
    ['Crest factor', crestFactor, ''],
    ['THD', thdPercent, '%'],
    ...(result.power === undefined
      ? []
      : [['Active power', result.power.activeW, 'W'] satisfies NamedFigure]),
  ];
}

/** A figure with what it is called and its unit; empty for a ratio. */
export type NamedFigure = readonly [name: string, figure: Figure, unit: string];

/** Figures as rows: the name, then the value with uncertainty or why there is none. */
export function namedTexts(figures: readonly NamedFigure[]): string[][] {
  return figures.map(([name, figure, unit]) => [
    name,
    figure.value === null ? `not measurable: ${reasonText(figure.reason)}` : figureText(figure, unit),
  ]);
}
