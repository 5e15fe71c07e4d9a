import { rounded } from '../base/amountText.ts';
import { hypot } from '../base/elementary.ts';
import type { Reason } from '../base/notice.ts';
import type { PowerFigures } from '../measure/power/powerFigures.ts';
import type { Harmonic, WaveFigures } from '../measure/waveFigures.ts';

export type LoadKindName =
  | 'resistive'
  | 'inductive'
  | 'capacitive'
  | 'rectifier'
  | 'mixed'
  | 'not classified';

export interface LoadKind {
  readonly kind: LoadKindName;
  /** Each a clause, or what it is made of; most telling first. */
  readonly reasons: readonly Reason[];
}

/** The figures that decide; a whole set of each fits. */
interface LoadEvidence {
  readonly power: Pick<PowerFigures, 'powerFactor' | 'displacementPowerFactor' | 'fundamentalReactiveVar'>;
  readonly voltage: Pick<WaveFigures, 'thdPercent' | 'harmonics'>;
  readonly current: Pick<WaveFigures, 'thdPercent' | 'crestFactor' | 'mean' | 'rms'>;
}

// Thresholds: common practice, no source.
/** Power factor from which a load draws a current of the voltage's own shape. */
const RESISTIVE_POWER_FACTOR = 0.98;
/** Distortion, in percent points, that a current may have beyond what a linear load would draw. */
const EXCESS_DISTORTION_PERCENT = 10;
/** A rectifier's current comes in narrow pulses near the voltage's peak. */
const RECTIFIER = { thdPercent: 30, crestFactor: 1.8, displacement: 0.8 };
/** Displacement power factor under which the clamp is the wrong way round; about 0, a coil's losses can't tell. */
const TURNED_ROUND = -0.1;
/** Mean over RMS from which the halves of a current differ for good. */
const HALF_WAVE_RATIO = 0.2;

/**
 * What kind of load draws the current, with the reasons.
 *
 * The power factor decides first, whatever the waves: it is 1 only where the current has the voltage's shape
 * (Cauchy-Schwarz). Then the distortion that the voltage doesn't explain tells switching loads from linear
 * ones, and the side on which the current lies tells these apart.
 *
 * @remarks A power that comes out negative is judged as if the clamp were turned round.
 */
export function loadKind({ power, voltage, current }: LoadEvidence): LoadKind {
  const { powerFactor, displacementPowerFactor: displacement, fundamentalReactiveVar: reactive } = power;
  const [distortion, crest] = [current.thdPercent, current.crestFactor];
  for (const figure of [powerFactor, displacement, reactive, distortion, crest, voltage.thdPercent]) {
    if (figure.value === null) return { kind: 'not classified', reasons: [figure.reason] };
  }
  const factor = Math.abs(powerFactor.value!);
  const shift = Math.abs(displacement.value!);
  const lags = reactive.value! * (displacement.value! < TURNED_ROUND ? -1 : 1) > 0;
  const thd = distortion.value!;
  const side = `the current ${lags ? 'lags' : 'leads'}: displacement power factor ${shift.toFixed(2)}`;
  const distorted = `current THD ${rounded(thd, 2)} %, beside ${rounded(voltage.thdPercent.value!, 2)} % of the voltage`;
  if (factor >= RESISTIVE_POWER_FACTOR) {
    const reasons = [`power factor ${factor.toFixed(2)}: the current follows the voltage`, distorted];
    return { kind: 'resistive', reasons };
  }
  const linear = lags ? voltage.thdPercent.value! : capacitorDistortion(voltage.harmonics);
  if (thd <= linear + EXCESS_DISTORTION_PERCENT) {
    // What keeps the power factor down is neither a shift nor harmonics: noise of a small current.
    const isInStep = shift >= RESISTIVE_POWER_FACTOR;
    return { kind: isInStep ? 'resistive' : lags ? 'inductive' : 'capacitive', reasons: [side, distorted] };
  }
  const pulses = `crest factor of the current ${crest.value!.toFixed(1)}, a sine has 1.4`;
  const halves = halfWaveReason(current);
  const isRectifier =
    thd >= RECTIFIER.thdPercent && crest.value! >= RECTIFIER.crestFactor && shift >= RECTIFIER.displacement;
  return isRectifier
    ? { kind: 'rectifier', reasons: [...halves, distorted, `${pulses}: short pulses at the peaks`] }
    : { kind: 'mixed', reasons: [...halves, distorted, side, pulses] };
}

function halfWaveReason({ mean, rms }: LoadEvidence['current']): string[] {
  if (mean.value === null || rms.value === null || Math.abs(mean.value) < HALF_WAVE_RATIO * rms.value) {
    return [];
  }
  return [`half-wave: the current has a mean of ${rounded(mean.value, 2)} A`];
}

/**
 * THD of the current that a capacitor would draw from a voltage: each order passes in proportion to its
 * number.
 *
 * THD = √Σ (n · Vn/V1)², n ≥ 2
 *
 * @param harmonics - of the voltage.
 * @returns percent.
 */
export function capacitorDistortion(harmonics: readonly Harmonic[]): number {
  return hypot(...harmonics.filter(({ order }) => order > 1).map(({ order, percent }) => order * percent));
}
