import type { AssayReasons } from '../assay/reasons.ts';
import type { Fact, Reason } from '../base/notice.ts';
import type { BenchReasons } from '../bench/reasons.ts';
import type { JudgeReasons } from '../judge/reasons.ts';
import type { MeasureReasons } from '../measure/reasons.ts';

/** Every reason why something can't be told, with its facts. */
interface Reasons extends MeasureReasons, AssayReasons, JudgeReasons, BenchReasons {}

/** Clauses that stand after "not measurable: " or in brackets, without a full stop. */
const clauses: { readonly [Code in keyof Reasons]: string | ((facts: Readonly<Reasons[Code]>) => string) } = {
  'wave.repeatsNot': ({ of }) =>
    ({
      noise: 'noise: nothing repeats',
      brief: 'the voltage is there for under 1.3 cycles: nothing repeats',
      constant: 'a direct voltage: nothing repeats',
      direct: 'a direct voltage: nothing repeats',
    })[of],
  'wave.noEdges': 'a smooth wave has no edges',
  'wave.noWholeEdge': 'no whole edge in the record',
  'wave.restsNot': 'a smooth wave crosses zero and does not rest there',
  'wave.kindUntold': 'the kind of wave could not be told',
  'mean.blocked': 'not measurable: the channel was AC-coupled, which blocks DC',
  'mean.zero': 'the mean is zero',
  'current.noFundamental': 'the current has no fundamental that stands out of its noise',
  'quotient.byNothing': 'what it would be divided by is within its own uncertainty of zero',
  'frequency.fewCycles': 'too few cycles to tell the frequency',
  'break.shortSide': 'under 1.3 cycles of voltage on one side of the break',
  'bursts.one': 'only one burst lies whole in the record',
  'voltage.notBack': 'the record ends before the voltage is back',
  'voltage.notSettled': 'the record, or the next step, comes before the voltage has settled',
  'nominal.unknown': 'no nominal voltage is known',
  'digitiser.edges':
    "a wave with edges has no fitted curve to measure the digitiser's noise against: check it on a sine",
  'digitiser.noCurve': 'nothing repeats, so there is no curve to measure the digitiser against',
  'digitiser.ownLines':
    'what the harmonics leave is the wave itself (ripple, drift or a tone between harmonics), not noise of the digitiser',
  'groups.outOfReach': ({ order }) => `order ${order} is out of reach`,
  'distortion.shortStretch': 'the stretch is too short to measure distortion on',
  'limit.noNominal': 'the nominal voltage is not known',
  'claim.noTransfer': 'no transfer in this capture: trigger on the moment when the mains go',
  'claim.valueAlone': ({ example }) =>
    `a value alone says nothing of how far it may be off: write for example ${example}`,
  'channel.cutOff': ({ percent }) =>
    `the scope cut it off, ${Math.round(percent)} % of its samples lie beyond the range: set more volts per division and save again`,
  'output.notStarted': 'the output did not start: what is there before it goes again is not its voltage',
  'piece.short': ({ cycles }) =>
    `${cycles.toFixed(1)} cycles of it are too few to tell its kind; save a record that holds more of it`,
  'capture.noVoltage': 'the capture has no voltage channel',
  'load.notSteady': 'no steady stretch under this load',
  'load.tooShort': 'the load was on too short for a steady voltage',
  'load.wentOff': 'the load had gone off or down before the voltage was lost',
  'load.untold': 'the load was neither told nor measured on the stretch that the figures describe',
  'load.noCurrent': 'neither load nor current is known',
  'voltage.none': 'no voltage was measured',
  'voltage.noneAtFullLoad': 'there is no voltage at full load',
  'sweep.noKnownLoad': 'no capture of a known load',
  'sweep.oneLoad': 'captures at one load only',
  'sweep.noIdle': 'no capture without load',
  'line.tooFew': 'a line needs captures at two different resistive loads below overload',
  'onset.oneLoad': 'captures at one known load at most',
  'onset.plateaus': ({ kind }) => `a wave that is ${kind} at its lowest load can’t be told by its tops`,
  'onset.notUpTo': ({ loadW }) => `the tops are not flattened up to ${Math.round(loadW)} W`,
  'range.unknown': 'no range is known: neither claimed nor nominal',
  'range.keptUpTo': ({ loadW }) => `the voltage keeps to its range up to ${Math.round(loadW)} W`,
  'range.leftAtOnce': ({ loadW }) => `outside its range at the lowest load already, ${Math.round(loadW)} W`,
  'step.none': 'no load step',
  'transfer.none': 'no transfer',
  'transfer.notBack': ({ in: where }) =>
    `the voltage did not come back${where === 'record' ? ' in this record' : ''}`,
  'energy.noRun': 'no energy run',
  'energy.noneAt': ({ side }) => `the energy at the ${side} was not measured`,
  'difference.noDoubt': 'nothing is known of its uncertainty',
  'difference.bound': ({ of }) => `${of.join(' and ')}: known only as a bound`,
  'difference.missing': ({ a, b }) =>
    [...(a === null ? [] : [`A: ${reasonText(a)}`]), ...(b === null ? [] : [`B: ${reasonText(b)}`])].join(
      '; ',
    ),
};

/** A reason in words; one that a document brought has them. @throws RangeError for one of no room. */
export function reasonText(reason: Reason): string {
  if (typeof reason === 'string') return reason;
  if (!isReason(reason)) throw new RangeError(`there is no sentence for ${reason.code}`);
  const clause: string | ((facts: never) => string) = clauses[reason.code];
  return typeof clause === 'string' ? clause : clause(reason as never);
}

/** Whether a fact is one of the reasons. */
export function isReason(fact: Fact): fact is Fact & { readonly code: keyof Reasons } {
  return Object.hasOwn(clauses, fact.code);
}
