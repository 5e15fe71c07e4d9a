import type { FailedResult, MeasureResult } from '../assay/measureDocument.ts';
import { amountText } from '../base/amountText.ts';
import type { Notice } from '../base/notice.ts';
import { mainFigures } from './figureRows.ts';
import { decimalText, groupedText, significantText } from './numbers.ts';
import { capitalised, cleanTexts, terminalText } from './text.ts';
import type { NoticeCode } from './worded.ts';

/** What a doubt may make wrong: every figure, worst first. */
const grave = ['channel', 'scale', 'zero', 'cut off', 'frequency', 'clock'] as const;

/** Then some of them, then what was merely assumed or left out. */
const slight = [
  'current',
  'outlier',
  'kind',
  'time assumed',
  'unit',
  'gaps',
  'steadiness',
  'cycles',
  'rate',
  'resolution',
  'coupling',
  'nominal',
  'time read',
  'rows',
] as const;

type Topic = (typeof grave | typeof slight)[number];

/** What each doubt is about; null: it stands after all others, in the order that it came in. */
const topics: Readonly<Record<NoticeCode, Topic | null>> = {
  'channels.larger': 'channel',
  'scale.half': 'scale',
  'scale.implied': 'scale',
  'scale.suspect': 'scale',
  'dc.large': 'zero',
  'digitiser.clipped': 'cut off',
  'wave.clipped': 'cut off',
  'wave.overRange': 'cut off',
  'frequency.suspect': 'frequency',
  'frequency.unsteady': 'frequency',
  'time.contradicts': 'clock',
  'time.disagrees': 'clock',
  'clock.others': 'clock',
  'clock.rows': 'clock',
  'units.contradict': 'scale',
  'current.noPeriod': 'current',
  'current.scaleAssumed': 'current',
  'load.differs': 'current',
  'counter.differs': 'current',
  'counter.fixedStep': 'current',
  'direction.assumed': 'current',
  'efficiency.tooHigh': 'current',
  'total.differs': 'current',
  'power.negative': 'current',
  'power.skew': 'current',
  'value.outlier': 'outlier',
  'kind.fewCodes': 'kind',
  'time.assumed': 'time assumed',
  'time.uneven': 'time assumed',
  'clock.assumed': 'time assumed',
  'unit.assumed': 'unit',
  'columns.unnamed': 'unit',
  'counter.unknown': 'unit',
  'units.assumed': 'unit',
  'units.product': 'unit',
  'side.unknown': 'unit',
  'gaps.found': 'gaps',
  'holes.counted': 'gaps',
  'holes.left': 'gaps',
  'run.open': 'gaps',
  'runs.several': 'gaps',
  'span.longest': 'steadiness',
  'span.steady': 'steadiness',
  'wave.drifts': 'steadiness',
  'cycles.few': 'cycles',
  'cycling.coarse': 'cycles',
  'rate.low': 'rate',
  'rate.steps': 'rate',
  'resolution.coarse': 'resolution',
  'coupling.ac': 'coupling',
  'nominal.none': 'nominal',
  'nominal.off': 'nominal',
  'nominal.other': 'nominal',
  'time.coarse': 'time read',
  'time.rateIgnored': 'time read',
  'rows.blank': 'rows',
  'rows.counter': 'rows',
  'rows.cut': 'rows',
  'rows.malformed': 'rows',
  'acquisition.mode': null,
  'acquisition.pairs': null,
  'bench.belowRating': null,
  'bench.loadKind': null,
  'bench.loadTold': null,
  'bench.loadUnknown': null,
  'bench.noStep': null,
  'bench.noTransfer': null,
  'bench.scaleDiffers': null,
  'channels.currentOnly': null,
  'channels.currents': null,
  'channels.others': null,
  'channels.unmeasured': null,
  'clock.back': null,
  'clock.equal': null,
  'columns.skipped': null,
  'columns.others': null,
  'compare.budgets': null,
  'compare.load': null,
  'compare.nominal': null,
  'compare.orders': null,
  'compare.rate': null,
  'compare.same': null,
  'counts.unscaled': null,
  'data.invented': null,
  'digitiser.missingCodes': null,
  'digitiser.noise': null,
  'digitiser.range': null,
  'efficiency.impossible': null,
  'logMeter.assumed': null,
  'groups.frequency': null,
  'groups.unsynchronised': null,
  'phase.jump': null,
  'ripple.alias': null,
  'segments.first': null,
  'tests.stacked': null,
};

const worstFirst: readonly Topic[] = [...grave, ...slight];

/** Null too of a code that is not known, as of a document that another version wrote. */
function topicOf({ code }: Notice): Topic | null {
  return Object.hasOwn(topics, code) ? topics[code as NoticeCode] : null;
}

/** Whether a doubt may make every figure wrong: such a one is told wherever a figure is shown. */
export function isGrave(notice: Notice): boolean {
  const topic = topicOf(notice);
  return topic !== null && (grave as readonly Topic[]).includes(topic);
}

/** Notices, worst first; those of one topic, and those of none, keep their order (the latter last). */
export function rankNotices(notices: readonly Notice[]): Notice[] {
  const rank = (notice: Notice): number => {
    const topic = topicOf(notice);
    return topic === null ? worstFirst.length : worstFirst.indexOf(topic);
  };
  return [...notices].sort((a, b) => rank(a) - rank(b));
}

/**
 * A file that could not be measured, in one line: where, what is wrong, what was expected and found, what to do.
 *
 * "kettle.csv, line 12, column 3: not a number; expected a voltage, found “abc”. Save the waveform as CSV."
 */
export function failureLine(failed: FailedResult): string {
  const { file, error } = cleanTexts(failed);
  const { message, line, column, expected, received, advice } = error;
  const place = [
    file,
    ...(line === undefined ? [] : [`line ${line}`]),
    ...(column === undefined ? [] : [`column ${column}`]),
  ].join(', ');
  const comparison = [
    ...(expected === undefined ? [] : [`expected ${expected}`]),
    ...(received === undefined ? [] : [`found ${received}`]),
  ].join(', ');
  const wrong = comparison === '' ? sentence(message) : `${bare(message)}; ${sentence(comparison)}`;
  return terminalText(`${place}: ${wrong}${advice === undefined ? '' : ` ${sentence(capitalised(advice))}`}`);
}

function bare(text: string): string {
  return text.replace(/\.$/, '');
}

/** With a full stop where none is. */
function sentence(text: string): string {
  return /[.!?…]$/.test(text) ? text : `${text}.`;
}

/** The capture in a few lines: what was recorded, which stretch and channel were measured, at which scale. */
export function captureLines(result: MeasureResult): string[] {
  const { capture } = result;
  const bits = capture.bits === null ? '' : `, ${decimalText(capture.bits, 0)} bits`;
  const lines = [
    `Record: ${groupedText(capture.samples)} samples at ${rateText(capture.sampleRateHz)}, ${secondsText(capture.durationS)}${bits}. Layout: ${capture.layout}.`,
  ];
  const figures = mainFigures(result);
  if (figures === null) return lines;
  const channel = capture.channels.find(({ name }) => name === figures.channel);
  const scale = channel === undefined ? '' : `, scale ×${significantText(channel.scale, 6)}`;
  const [from, to] = figures.spanS;
  lines.push(
    `Measured: channel ${figures.channel}${scale}, from ${secondsText(from)} to ${secondsText(to)}, ${significantText(figures.cyclesUsed, 3)} cycles.`,
  );
  return lines;
}

/** "100 MS/s", "20 µs": in the unit that people write. */
function rateText(rateHz: number): string {
  return amountText(rateHz, 'S/s', 4);
}

function secondsText(seconds: number): string {
  return amountText(seconds, 's', 4);
}
