import type { Figure } from '../base/figure.ts';
import type { HighBands } from '../measure/bands/highBands.ts';
import { budgeted } from '../measure/doubt/budget.ts';
import {
  alikeWithin,
  ownDistortion,
  type ScaleSource,
  scaleComponents,
  scatter,
  within,
} from '../measure/doubt/component.ts';
import type { Instrument } from '../measure/doubt/instrument.ts';
import {
  type DistortionOptions,
  distortionFigure,
  type GroupFigures,
  type GroupValues,
} from '../measure/groups/groupFigures.ts';
import type { MeasuredWave } from '../measure/measuredWave.ts';
import type { Spectra } from '../measure/spectra.ts';
import { withoutBudget } from './channelFigures.ts';
import { outOfReach } from './reasons.ts';
import type { DigitiserDocument } from './spectraDocument.ts';

/** What the documents below are made with. */
export interface SpectraContext {
  readonly wave: MeasuredWave;
  readonly instrument: Instrument;
  readonly scaleSource: ScaleSource;
  /** Whether each window of the groups is listed. */
  readonly perWindow: boolean;
}

/** @returns its list elements still with keys that end in `rms`: `keyedByUnit` gives them their unit. */
export function groupsDocument(groups: GroupFigures, context: SpectraContext): object {
  const { wave, instrument, perWindow } = context;
  const factors = groups.all.distortion;
  const highestOrder = factors.at(-1)!.highestOrder;
  const factor = (kind: DistortionOptions['kind'], to: number): Figure => {
    const figure = distortionFigure(groups, {
      kind,
      highestOrder: to,
      noise: wave.periodic?.noise ?? 0,
      intervalS: wave.intervalS,
      distortion: ownDistortion(instrument.distortionPercent, 1),
    });
    return figure === null ? outOfReach({ code: 'groups.outOfReach', order: to }) : withoutBudget(figure);
  };
  const ratio = groups.all.partialWeightedRatio;
  return {
    cyclesPerWindow: groups.cyclesPerWindow,
    windowS: groups.windowS,
    windows: groups.windows.length,
    lineSpacingHz: groups.lineSpacingHz,
    extent: groups.extent,
    highestOrder,
    thdPercent: factor('thdRatio', highestOrder),
    thdGroupsPercent: factor('thdGroupsRatio', highestOrder),
    thdSubgroupsPercent: factor('thdSubgroupsRatio', highestOrder),
    ...(highestOrder > 40
      ? {
          thdPercentTo40: factor('thdRatio', 40),
          thdGroupsPercentTo40: factor('thdGroupsRatio', 40),
          thdSubgroupsPercentTo40: factor('thdSubgroupsRatio', 40),
        }
      : {}),
    partialWeightedPercent: ratio === null ? null : 100 * ratio,
    orders: groups.all.orders,
    smoothedHighest: groups.smoothedHighest,
    threeSeconds: groups.threeSeconds.map(({ orders }) => orders),
    ...(perWindow
      ? {
          perWindow: groups.windows.map((window, i) =>
            windowDocument(window, wave.startS + i * groups.windowS),
          ),
        }
      : {}),
  };
}

function windowDocument({ orders, distortion }: GroupValues, startS: number): object {
  const factors = distortion.at(-1)!;
  return {
    startS,
    fundamentalRms: orders[0]!.rms,
    thdPercent: 100 * factors.thdRatio,
    thdGroupsPercent: 100 * factors.thdGroupsRatio,
    thdSubgroupsPercent: 100 * factors.thdSubgroupsRatio,
  };
}

/** @returns keys that end in `rms`: `keyedByUnit` gives them their unit. */
export function highBandsDocument(high: HighBands, context: SpectraContext): object {
  const { instrument, scaleSource } = context;
  const inUnit = (rms: number, deviation: number, noise: number): Figure =>
    withoutBudget(
      budgeted(rms, [
        ...scaleComponents(rms, instrument, scaleSource),
        scatter('noise', deviation, 'U'),
        within('noise counted in', noise, 'U', 1),
        within('method', 0.002 * rms, 'U', 1),
      ]),
    );
  const { ripple } = high;
  return {
    lineSpacingHz: high.lineSpacingHz,
    windows: high.windows,
    windowCycles: high.windowCycles,
    rms: inUnit(high.rms, high.rmsDeviation, high.rmsOfNoise),
    bands: high.bands,
    ripple:
      ripple === null
        ? null
        : {
            frequencyHz: withoutBudget(
              budgeted(ripple.frequencyHz, [
                within('resolution', ripple.frequencyWithinHz, 'Hz', 1),
                alikeWithin('time base', instrument.timeBasePpm, 'ppm', 1e-6 * ripple.frequencyHz),
              ]),
            ),
            rms: inUnit(ripple.rms, ripple.rmsDeviation, 0),
            lines: ripple.lines,
          },
  };
}

export function digitiserDocument(digitiser: Spectra['digitiser']): DigitiserDocument {
  if ('reason' in digitiser) return digitiser;
  const { notices: _, clipped: __, ...numbers } = digitiser;
  return numbers;
}
