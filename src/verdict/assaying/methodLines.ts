import type { MeasuredWave } from '../../figures/measuredWave.ts';
import type { Instrument } from '../../figures/uncertainty/instrument.ts';
import type { MeterComparison } from '../measureDocument.ts';
import type { DecisionRule } from '../rule/decide.ts';

export interface MethodFacts {
  readonly wave: MeasuredWave;
  readonly instrument: Instrument;
  readonly rule: DecisionRule;
  readonly sineThdPercent: number;
  readonly meter: MeterComparison | null;
  /** Highest harmonic asked for. */
  readonly orders: number;
  /** Of the measured channel. */
  readonly scale: number;
}

/** How a wave was measured and what was assumed, a sentence each. */
export function methodLines(facts: MethodFacts): readonly string[] {
  const { wave, instrument, rule, sineThdPercent, meter, scale } = facts;
  const { figures } = wave;
  const samples = `${wave.samples.length} samples`;
  const lines =
    wave.periodic === null
      ? [`Mean and RMS over the whole record, ${samples}.`]
      : [
          `Frequency, offset and harmonics 1 to ${figures.thdOrders} fitted together by least squares over ${figures.cyclesUsed.toFixed(2)} cycles, ${samples}; RMS in time over whole cycles, DC included.`,
          `THD: orders 2 to ${figures.thdOrders} over the fundamental, less what noise adds. Pure sine up to ${sineThdPercent} % (common practice, no source).`,
        ];
  if (scale !== 1) lines.push(`Scale of the channel: ${Number(scale.toPrecision(6))}.`);
  const gain =
    meter?.answer === 'calibrated'
      ? `gain tied to the meter, the meter within ${instrument.gainPercent} %`
      : `gain within ${instrument.gainPercent} %, probe ${instrument.probePercent} % (a meter reading tightens these: --meter)`;
  lines.push(
    `Assumed of the instrument, not measured: ${gain}, time base ${instrument.timeBasePpm} ppm, own distortion ${instrument.distortionPercent} %, offset ${instrument.offsetPercent} % of the range. Uncertainties cover about 95 %.`,
  );
  lines.push(
    rule === 'guarded'
      ? 'Decision rule: guard band of one uncertainty (ILAC-G8:09/2019, JCGM 106:2012).'
      : 'Decision rule: simple acceptance, no guard band (ILAC-G8:09/2019).',
  );
  return lines;
}
