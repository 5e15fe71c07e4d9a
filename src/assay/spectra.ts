import type { Figure } from '../base/figure.ts';
import type { Nominal } from '../judge/nominal/mainsNominals.ts';
import { type HighBands, highBands } from '../measure/bands/highBands.ts';
import { digitiserCheck } from '../measure/digitiser/digitiserCheck.ts';
import type { DigitiserFigures } from '../measure/digitiser/digitiserFigures.ts';
import { budgeted } from '../measure/doubt/budget.ts';
import {
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
import { harmonicGroups } from '../measure/groups/harmonicGroups.ts';
import type { MeasuredWave } from '../measure/measuredWave.ts';
import type { Capture, Channel } from '../read/capture.ts';
import { withoutBudget } from './channelFigures.ts';
import type { AssayNotice } from './notices.ts';
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
    return figure === null ? { value: null, reason: `order ${to} is out of reach` } : withoutBudget(figure);
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
                within('time base', instrument.timeBasePpm, 'ppm', 1e-6 * ripple.frequencyHz),
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

/** What is read off a periodic record besides its figures. */
export interface Spectra {
  /** Null where the record holds no window of 10 or 12 cycles. */
  readonly groups: GroupFigures | null;
  /** Null where the sample rate does not reach 2 kHz, or nothing repeats. */
  readonly high: HighBands | null;
  readonly digitiser: DigitiserFigures | { readonly reason: string };
  readonly notices: readonly AssayNotice[];
}

/** Harmonic groups, what lies above 2 kHz, and the digitiser's quality, of a measured channel. */
export function spectra(
  capture: Capture,
  channel: Channel,
  wave: MeasuredWave,
  nominal: Nominal | null,
): Spectra {
  if (wave.periodic === null) {
    const reason = 'nothing repeats, so there is no curve to measure the digitiser against';
    return { groups: null, high: null, digitiser: { reason }, notices: [] };
  }
  const { intervalS, samples, stepSize } = wave;
  const { fit, levels, residualPower } = wave.periodic;
  const smooth = levels.length === 0;
  const nominalFrequencyHz = nominal?.frequencyHz ?? null;
  const groups = harmonicGroups({ intervalS, fit, nominalFrequencyHz });
  const high = withoutCodeTones(
    highBands({
      ...{ intervalS, fit, residualPower, nominalFrequencyHz, smooth },
      acquisition: capture.acquisition ?? null,
    }),
    stepSize,
  );
  const digitiser = digitiserCheck({
    samples,
    stepSize,
    bits: channel.bits ?? null,
    fit,
    smooth,
    unit: channel.quantity === 'current' ? 'A' : 'V',
    scale: channel.scale,
  });
  const notices = [groups, high, digitiser].flatMap((part) =>
    part !== null && 'notices' in part ? part.notices : [],
  );
  return { groups, high, digitiser, notices };
}

/** Codes walked through without noise beat with the sample rate: a line below q/√12 may be no more than that. */
function withoutCodeTones(high: HighBands | null, stepSize: number | null): HighBands | null {
  if (high?.ripple == null || high.ripple.rms > (stepSize ?? 0) / Math.sqrt(12)) return high;
  return { ...high, ripple: null, notices: high.notices.filter(({ code }) => code !== 'ripple.alias') };
}
