import type { DecisionRule } from '../judge/decide.ts';
import type { JudgedChannel } from '../judge/judgeChannel.ts';
import type { MeasuredChannel } from '../measure/measureChannel.ts';
import type { Spectra } from '../measure/spectra.ts';
import type { Channel } from '../read/capture.ts';
import type { Assay } from './assay.ts';
import type { AssayOptions, CaptureSource } from './assayOptions.ts';
import { captureSummary, dedupeNotices, traceOf } from './captureSummary.ts';
import { budgetsOf, currentFigures, keyedByUnit, voltageFigures } from './channelFigures.ts';
import { jumpNotices, steadyNotice } from './course.ts';
import { courseResults } from './courseResults.ts';
import { loadOf, loadSeenOf } from './loadOf.ts';
import type { AssayResult, CurrentFigures, VoltageFigures } from './measureDocument.ts';
import { methodLines } from './methodLines.ts';
import type { AssayNotice } from './notices.ts';
import { digitiserDocument, groupsDocument, highBandsDocument, type SpectraContext } from './spectra.ts';

/** What was told of a channel, with defaults, and where it is from. */
interface ChannelTold {
  readonly source: CaptureSource;
  readonly options: AssayOptions;
  /** The load that words tell, W; null: not told. */
  readonly toldW: number | null;
  readonly rule: DecisionRule;
  readonly sineThdPercent: number;
  readonly orders: number;
  /** The load's current; null: not recorded. */
  readonly current: Channel | null;
  readonly notices: { readonly given: readonly AssayNotice[]; readonly ofCurrent: readonly AssayNotice[] };
}

/** What was measured and judged of a channel, as its result has it, with what its picture is drawn from. */
export function channelAssay(measured: MeasuredChannel, judged: JudgedChannel, told: ChannelTold): Assay {
  const { capture, channel, chain, wave, supply, happened, stretch, spectra } = measured;
  const { source, options, rule, sineThdPercent, notices } = told;
  const { figures } = wave;
  const load = loadOf(measured, judged, options);
  const { dynamics, ...course } = courseResults(measured, judged, {
    ...{ orders: told.orders, isResistiveFullStep: options.isResistiveFullStep ?? false },
    // What a load draws in under 1.3 cycles can't be told; where a current was captured, what words tell doesn't count.
    toldW: wave.aperiodic === 'brief' && told.current !== null ? null : told.toldW,
  });
  const under = loadSeenOf(measured, judged, {
    ...{ current: told.current, told: options.load, file: source.file },
    result: { ...course, ...load.sections },
  });
  const unit = channel.quantity === 'voltage' ? 'V' : 'A';
  const budgets = budgetsOf(figures, unit);
  return {
    result: {
      ...source,
      ...(options.label === undefined ? {} : { label: options.label }),
      ...(options.load === undefined ? {} : { load: options.load }),
      ...under.section,
      capture: { ...captureSummary(capture, channel, wave), digitiser: digitiserDocument(spectra.digitiser) },
      nominal: judged.nominal,
      ...channelSection(channel, spectra, { wave, ...chain, perWindow: options.perWindow ?? false }),
      ...load.sections,
      waveform: judged.waveform,
      claims: judged.claims,
      ...course,
      findings: judged.findings,
      ...(judged.meter === null ? {} : { meter: judged.meter }),
      notices: [
        ...notices.given,
        ...(stretch === undefined ? [] : [steadyNotice(stretch, supply, capture)]),
        ...jumpNotices(happened.jumps),
        ...judged.notices,
        ...dedupeNotices(figures.notices, spectra.notices, channel.overRange !== undefined).filter(
          ({ code }) => judged.isAlternating || !OF_WAVES.has(code),
        ),
        ...notices.ofCurrent,
        ...load.notices,
        ...under.notices,
      ],
    },
    trace: traceOf(wave, unit),
    dynamics,
    budgets,
    method: methodLines({
      ...{ wave, ...chain, rule, sineThdPercent, scale: channel.scale, budgets },
      told: options.instrument ?? {},
    }),
  };
}

/** Doubts that advise on how to see a mains wave better. */
const OF_WAVES: ReadonlySet<AssayNotice['code']> = new Set([
  ...(['cycles.few', 'frequency.unsteady', 'rate.low', 'rate.steps', 'wave.drifts'] as const),
]);

/** The channel's figures and spectra, under the key of its quantity. */
function channelSection(
  { name, quantity }: Channel,
  { groups, high }: Spectra,
  context: SpectraContext,
): Pick<AssayResult, 'voltage'> | Pick<AssayResult, 'current'> {
  const sections = {
    ...(groups === null ? {} : { harmonicGroups: groupsDocument(groups, context) }),
    ...(high === null ? {} : { highBands: highBandsDocument(high, context) }),
  };
  return quantity === 'voltage'
    ? {
        voltage: {
          ...voltageFigures(name, context.wave.figures),
          ...keyedByUnit<Partial<VoltageFigures>>(sections, 'V'),
        },
      }
    : {
        current: {
          ...currentFigures(name, context.wave.figures),
          ...keyedByUnit<Partial<CurrentFigures>>(sections, 'A'),
        },
      };
}
