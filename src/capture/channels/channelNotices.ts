import type { Notice } from '../../base/notice.ts';
import type { Channel, OverRange } from '../capture.ts';
import type { TimeBase } from '../time/rowArrangement.ts';
import type { BuiltChannel } from './buildChannel.ts';

/** What a person must know about the channels before trusting a figure of them. */
export function channelNotices(
  built: readonly BuiltChannel[],
  emptyNames: readonly string[],
  timeBase: TimeBase,
  bendRatio: number,
): Notice[] {
  const names = (pick: (channel: BuiltChannel) => boolean): string =>
    built
      .filter(pick)
      .map(({ channel }) => channel.name)
      .join(', ');
  const proposals = (pick: (channel: BuiltChannel) => boolean): string =>
    built
      .filter(pick)
      .flatMap(({ channel, implied }) =>
        implied === null
          ? []
          : ` The head gives ${implied.from}: try --scale ${channel.name}=${Number(implied.factor.toPrecision(5))}.`,
      )
      .join('');
  const notices: Notice[] = [];
  const notice = (code: string, message: string): void => void notices.push({ code, message });

  const volts = names(({ isUnitAssumed, channel }) => isUnitAssumed && channel.quantity === 'voltage');
  const amperes = names(({ isUnitAssumed, channel }) => isUnitAssumed && channel.quantity === 'current');
  const assumed = [volts === '' ? '' : `volts for ${volts}`, amperes === '' ? '' : `amperes for ${amperes}`]
    .filter((words) => words !== '')
    .join(', ');
  if (assumed !== '') notice('unit.assumed', `The file names no unit. Assumed: ${assumed}.`);
  const counts = names(({ isUnscaledCounts }) => isUnscaledCounts);
  if (counts !== '') {
    notice(
      'counts.unscaled',
      `${counts} holds bare converter counts: give the volts of one count with --scale.${proposals((one) => one.isUnscaledCounts)}`,
    );
  }
  const whole = names(({ implied, isUnscaledCounts }) => implied !== null && !isUnscaledCounts);
  if (whole !== '') {
    notice(
      'scale.implied',
      `${whole} holds whole numbers that may be a converter's codes.${proposals((one) => !one.isUnscaledCounts)}`,
    );
  }
  if (emptyNames.length > 0) {
    notice('columns.skipped', `With no more than a few numbers, and left out: ${emptyNames.join(', ')}.`);
  }
  for (const { channel } of built) {
    const { overRange } = channel;
    if (overRange !== undefined) notice('wave.overRange', overRangeMessage(channel, overRange));
    if (channel.gaps.length === 0) continue;
    const missing = channel.gaps.reduce((sum, gap) => sum + gap.to - gap.from, 0);
    const where = channel.gaps.length === 1 ? 'one gap' : `${channel.gaps.length} gaps`;
    notice(
      'gaps.found',
      `${channel.name} has ${where}: ${missing} of ${channel.samples.length} samples ${missing === 1 ? 'is missing. It keeps its place in time and is' : 'are missing. They keep their place in time and are'} not filled in.`,
    );
  }
  if (timeBase.arrangement.kind === 'held') {
    notice(
      'time.uneven',
      'The file keeps a row only where a value changed: in between, the value before is held, as the file means it.',
    );
  }
  if (timeBase.arrangement.kind === 'resampled') {
    const percent = Math.max(0.1, 100 * bendRatio).toFixed(1);
    notice(
      'time.uneven',
      `The samples are unevenly spaced in time: they were laid on even steps along straight lines, which may miss the wave by up to ${percent} % of its span.`,
    );
  }
  return notices;
}

function overRangeMessage({ name, unit, samples }: Channel, { sampleCount, top, bottom }: OverRange): string {
  const ends = [top, bottom]
    .filter((end) => end !== null)
    .map((end) => `${Number(end.toPrecision(4))} ${unit}`.trim())
    .join(' and ');
  const knob = unit === 'A' ? 'amperes' : 'volts';
  return `${name} went beyond the scope's range: ${sampleCount} of ${samples.length} samples hold a mark for that instead of a value. They count as cut off at ${ends}; its RMS and peaks are really higher. Set more ${knob} per division and save again.`;
}
