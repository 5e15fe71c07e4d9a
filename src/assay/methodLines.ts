import type { DecisionRule } from '../judge/decide.ts';
import { contribution, type ScaleSource } from '../measure/doubt/component.ts';
import { type Instrument, OFFSET_PERCENT_OF_RANGE } from '../measure/doubt/instrument.ts';
import type { MeasuredWave } from '../measure/measuredWave.ts';
import type { NamedBudget } from './assay.ts';

interface MethodFacts {
  readonly wave: MeasuredWave;
  readonly instrument: Instrument;
  /** The part of it that was told and not assumed. */
  readonly told: Partial<Instrument>;
  readonly scaleSource: ScaleSource;
  readonly rule: DecisionRule;
  readonly sineThdPercent: number;
  /** Of the measured channel. */
  readonly scale: number;
  readonly budgets: readonly NamedBudget[];
}

/** How a wave was measured and what was assumed, a sentence each. */
export function methodLines(facts: MethodFacts): readonly string[] {
  const { wave, rule, sineThdPercent, scale } = facts;
  const { figures } = wave;
  const samples = `${wave.samples.length} samples`;
  const lines =
    wave.periodic === null
      ? [
          wave.aperiodic === 'brief'
            ? `Extremes over the whole record, ${samples}.`
            : `Mean and RMS over the whole record, ${samples}.`,
        ]
      : [
          `Frequency, offset and harmonics 1 to ${figures.thdOrders} fitted together by least squares over ${figures.cyclesUsed.toFixed(2)} cycles, ${samples}; RMS in time over whole cycles, DC included.`,
          `THD: orders 2 to ${figures.thdOrders} over the fundamental, less what noise adds. Pure sine up to ${sineThdPercent} % (common practice, no source).`,
        ];
  if (scale !== 1) lines.push(`Scale of the channel: ${Number(scale.toPrecision(6))}.`);
  lines.push(instrumentLine(facts), ...doubtLine(facts.budgets));
  lines.push(
    rule === 'guarded'
      ? 'Decision rule: guard band of one uncertainty (ILAC-G8:09/2019, JCGM 106:2012).'
      : 'Decision rule: simple acceptance, no guard band (ILAC-G8:09/2019).',
  );
  return lines;
}

/** What is known of the instrument, what is assumed of it, and what would tighten it. */
function instrumentLine({ instrument, told, scaleSource }: MethodFacts): string {
  const parts: [key: keyof Instrument, words: string][] = [
    ...(scaleSource === 'meter'
      ? [['meterPercent', `scale tied to the meter, the meter within ${instrument.meterPercent} %`] as const]
      : [
          ['gainPercent', `gain within ${instrument.gainPercent} %`] as const,
          ['probePercent', `probe ${instrument.probePercent} %`] as const,
        ]
    ).map(([key, words]): [keyof Instrument, string] => [key, words]),
    ['timeBasePpm', `time base ${instrument.timeBasePpm} ppm`],
    ['distortionPercent', `own distortion ${instrument.distortionPercent} %`],
    [
      'offsetV',
      instrument.offsetV === null
        ? `offset ${OFFSET_PERCENT_OF_RANGE} % of the range`
        : `offset ${instrument.offsetV} V`,
    ],
  ];
  const list = (wanted: boolean): string =>
    parts
      .filter(([key]) => (told[key] !== undefined) === wanted)
      .map(([, words]) => words)
      .join(', ');
  const known = list(true);
  const assumed = list(false);
  const hint = scaleSource === 'meter' ? '' : ' A meter reading (--meter) tightens the volts.';
  return [
    known === '' ? '' : `Told of the instrument: ${known}. `,
    assumed === '' ? '' : `Assumed of the instrument, not measured: ${assumed}. `,
    `Uncertainties cover about 95 %.${hint}`,
  ].join('');
}

/** Where most of the doubt in RMS and THD comes from: the short form of their budgets. */
function doubtLine(budgets: readonly NamedBudget[]): string[] {
  const parts = budgets
    .filter(({ key }) => key === 'rms' || key === 'thdPercent')
    .flatMap(({ figure, budget }) => {
      const sources = budget.components
        .filter((component) => contribution(component) > 0.3 * budget.combinedStandardUncertainty)
        .map(({ source }) => source);
      return sources.length === 0 ? [] : [`in ${figure} from ${sources.join(' and ')}`];
    });
  return parts.length === 0 ? [] : [`The doubt comes mostly ${parts.join(', ')}.`];
}
