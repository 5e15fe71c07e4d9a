import * as v from 'valibot';
import type { Figure } from '../base/figure.ts';
import type { Worded } from '../base/notice.ts';
import {
  alike,
  count,
  figure,
  finite,
  list,
  optional,
  pair,
  type Schema,
  size,
  text,
} from '../base/schema.ts';
import { type ChannelUnit, type EachChannelFigure, figuresIn } from '../measure/figures.ts';
import type { CurrentFigures, VoltageFigures } from './measureDocument.ts';

/** What a result says of a voltage channel. */
export const voltageSchema: Schema<Worded<VoltageFigures>> = v.looseObject(sectionIn('V'));

/** What a result says of a current channel. */
export const currentSchema: Schema<Worded<CurrentFigures>> = v.looseObject(sectionIn('A'));

/** Keys of volts and amperes end in their unit. */
function sectionIn<U extends ChannelUnit>(unit: U) {
  return {
    ...{ channel: text(), spanS: pair, cyclesUsed: size, thdOrders: count },
    ...figureOfEach(unit),
    harmonics: list(
      v.looseObject({
        ...{ order: count, ...alike([`rms${unit}`, 'percent', 'phaseDeg'], finite) },
        ...optional({ uncertaintyPercent: size, notAbovePercent: finite }),
      }),
      1000,
    ),
    ...optional({ harmonicGroups: groupsIn(unit), highBands: bandsIn(unit) }),
  };
}

/** A figure under each key of the catalogue; what is not drawn may be absent, for earlier versions had fewer. */
function figureOfEach<U extends ChannelUnit>(unit: U): EachChannelFigure<Schema<Figure<string>>, U> {
  const entries = figuresIn(unit).map(({ key, drawn = false }) => [
    key,
    drawn ? figure : v.exactOptional(figure),
  ]);
  return Object.fromEntries(entries) as EachChannelFigure<Schema<Figure<string>>, U>;
}

/** Harmonics by windows of 10 or 12 cycles. */
function groupsIn<U extends ChannelUnit>(unit: U) {
  const thds = ['thdPercent', 'thdGroupsPercent', 'thdSubgroupsPercent'] as const;
  const order = v.looseObject({
    order: count,
    ...alike([`rms${unit}`, `groupRms${unit}`, `subgroupRms${unit}`], size),
    ...alike([`interharmonicGroupRms${unit}`, `interharmonicSubgroupRms${unit}`], size),
  });
  const window = v.looseObject({ startS: finite, ...alike([...thds, `fundamentalRms${unit}`], size) });
  const orders = list(order, 1000);
  return v.looseObject({
    ...{ cyclesPerWindow: count, windowS: size, windows: count, lineSpacingHz: size },
    ...{ extent: text(), highestOrder: count, ...alike(thds, figure) },
    ...optional(alike(['thdPercentTo40', 'thdGroupsPercentTo40', 'thdSubgroupsPercentTo40'], figure)),
    ...{ partialWeightedPercent: v.nullable(size), orders, smoothedHighest: v.nullable(orders) },
    threeSeconds: list(orders),
    ...optional({ perWindow: list(window, 1_000_000) }),
  });
}

/** What lies above 2 kHz. */
function bandsIn<U extends ChannelUnit>(unit: U) {
  const rms = [`rms${unit}`] as const;
  return v.looseObject({
    ...{ lineSpacingHz: size, windows: count, windowCycles: count, ...alike(rms, figure) },
    bands: list(v.looseObject({ centreHz: size, widthHz: size, ...alike(rms, size) })),
    ripple: v.nullable(
      v.looseObject({
        ...alike(['frequencyHz', ...rms], figure),
        lines: v.nullable(list(v.looseObject({ offset: finite, frequencyHz: size, ...alike(rms, size) }))),
      }),
    ),
  });
}
