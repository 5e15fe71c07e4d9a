import type { Assay } from '../../assay/assay.ts';
import type { Notice } from '../../base/notice.ts';
import type { OneCapture } from '../../draw/evidence.ts';
import { differenceWords } from '../../words/notices/rechecked.ts';
import { jsonText } from '../../words/text.ts';
import { worded } from '../../words/worded.ts';
import { carryDynamics, carryTrace } from '../evidence/captureEvidence.ts';
import { type ValueDifference, valueDifferences } from './valueDifferences.ts';

/** Where the capture lies is no part of the result; that it is another is said by itself. */
const ignored = ['file', 'sha256'];

/**
 * Holds what a sheet carries against its capture, measured again with the options that the sheet carries.
 *
 * @param again - the results of that capture; one a channel where several were asked for.
 * @returns what differs, each in a sentence, figures first; empty where nothing does.
 */
export function recheckCapture(evidence: OneCapture, again: readonly Assay[]): readonly Notice[] {
  const { result, method, trace, dynamics } = evidence;
  const assay = again.find((one) => channelOf(one.result) === channelOf(result)) ?? again[0]!;
  const isOther = assay.result.sha256 !== result.sha256;
  const carried = { method, trace, dynamics };
  const measured = plain({
    method: assay.method,
    trace: carryTrace(assay.trace),
    dynamics: dynamics === null ? null : carryDynamics(assay),
  });
  return [
    ...(isOther
      ? [differenceWords({ code: 'capture.other', sha256: assay.result.sha256, sheetSha256: result.sha256 })]
      : []),
    ...[...valueDifferences(result, plain(worded(assay.result)), ignored)]
      .sort((a, b) => rankOf(a) - rankOf(b))
      .map(figureFault),
    ...['method', 'trace', 'dynamics'].flatMap((part) =>
      partFault(part as keyof typeof carried, carried, measured),
    ),
  ];
}

/** What a reader looks at first comes first. */
const firstKeys = ['waveform', 'voltage', 'current', 'power', 'claims', 'steps', 'events'];

function rankOf({ path }: ValueDifference): number {
  const rank = firstKeys.indexOf(path.split('.')[0] ?? '');
  return rank < 0 ? firstKeys.length : rank;
}

/** One value that the capture gives otherwise. */
export function figureFault(values: ValueDifference): Notice {
  return differenceWords({ code: 'figure.differs', ...values });
}

type Part = 'method' | 'trace' | 'dynamics';

function partFault<T extends Record<Part, unknown>>(part: Part, carried: T, measured: T): readonly Notice[] {
  return valueDifferences(carried[part], measured[part]).length === 0
    ? []
    : [differenceWords({ code: `${part}.differs` })];
}

function channelOf({ voltage, current }: Assay['result'] | OneCapture['result']): string | undefined {
  return (voltage ?? current)?.channel;
}

/** As it stands after a way through JSON, as what a sheet carries did. */
function plain<T>(value: T): T {
  return JSON.parse(jsonText(value)) as T;
}
