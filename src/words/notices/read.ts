import { amountText, rounded } from '../../base/amountText.ts';
import type { ReadNotices } from '../../read/notices.ts';
import type { OptionName } from '../optionNames.ts';
import type { SentencesOf } from './sentences.ts';

const quoted = (names: readonly string[]): string => names.map((name) => `"${name}"`).join(', ');

function hintsOf({ hints }: Readonly<ReadNotices['counts.unscaled']>, option: OptionName): string {
  return hints
    .map(({ channel, factor, division }) => {
      const given =
        division === null
          ? 'this for one count'
          : `${rounded(division.volts, 4)} for a division, which is ${division.counts} counts on most scopes`;
      return ` The head gives ${given}: try ${option('scales')} ${channel}=${rounded(factor, 5)}.`;
    })
    .join('');
}

/** What a person must know of how a capture was read. */
export const read: SentencesOf<ReadNotices> = {
  'channels.currentOnly': ({ channel }) =>
    `The capture has no voltage channel: the current of ${channel} is measured.`,
  'channels.larger': ({ channel, swing, unit, first, times }, option) => {
    const more = times === null ? '' : `, ${rounded(times, 2)} times as much as ${first}`;
    return `${channel} carries ${rounded(swing, 3)} ${unit}${more}, and ${first} is measured only because it stands first: if ${channel} is the outlet, measure it with ${option('voltage')} ${channel}.`;
  },
  'channels.others': ({ first, unit, others }, option) =>
    `${first} is measured, the first of ${1 + others.length} channels in ${unit}; not measured: ${others.join(', ')} (${option('voltage')} NAME or ${option('voltage')} all).`,
  'columns.skipped': (facts) => {
    switch (facts.why) {
      case 'side by side':
        return `The file holds ${facts.exports} exports side by side: the first is read.`;
      case 'text':
        return `Not numbers, and left out: ${quoted(facts.names)}.`;
      case 'envelope':
        return `Lowest and highest values, not a wave, and not measured: ${quoted(facts.names)}. Switch peak detect off to save the samples.`;
      case 'empty':
        return `With no more than a few numbers, and left out: ${facts.names.join(', ')}.`;
    }
  },
  'counts.unscaled': (facts, option) =>
    `${facts.channels.join(', ')} holds bare converter counts: give the volts of one count with ${option('scales')}.${hintsOf(facts, option)}`,
  'current.scaleAssumed': ({ channel, unit }, option) =>
    `${channel} is in ${unit === '' ? 'no unit' : unit}: one is taken as 1 A. Give the clamp's amperes per volt with ${option('scales')} ${channel}=FACTOR (10 for 100 mV/A).`,
  'data.invented': 'The file says that its data are invented, for demonstration.',
  'gaps.found': ({ channel, gaps, missing, samples }) => {
    const where = gaps === 1 ? 'one gap' : `${gaps} gaps`;
    const are =
      missing === 1
        ? 'is missing. It keeps its place in time and is'
        : 'are missing. They keep their place in time and are';
    return `${channel} has ${where}: ${missing} of ${samples} samples ${are} not filled in.`;
  },
  'rows.blank': ({ lines }) =>
    `${lines === 1 ? 'One blank line stands' : `${lines} blank lines stand`} between the values, which have no times: if a value was lost there, all behind it are measured too early.`,
  'rows.counter': ({ size }) =>
    `The rows are numbered by a counter that starts anew after ${size}: they are taken as one record.`,
  'rows.cut': ({ lines }) =>
    `${lines === 1 ? 'The last line is' : `The last ${lines} lines are`} cut off or no row of numbers, and left out.`,
  'rows.malformed': ({ lines, more, found }) => {
    const [subject, are, rows] =
      lines.length + more === 1 ? ['Line', 'is', 'a row'] : ['Lines', 'are', 'rows'];
    const others = more > 0 ? ` and ${more} more` : '';
    return `${subject} ${lines.join(', ')}${others} can't be read as ${rows} of numbers (${found}) and ${are} left out.`;
  },
  'scale.implied': (facts, option) =>
    `${facts.channels.join(', ')} holds whole numbers that may be a converter's codes.${hintsOf(facts, option)}`,
  'segments.first': ({ records }) =>
    `The file holds ${records} records one after the other: the first is read.`,
  'time.assumed':
    'The file names no unit of time: seconds are assumed. Check that the frequency makes sense.',
  'time.coarse':
    'The time stamps are coarser than the samples: the sampling interval is taken from the whole record, not from single steps.',
  'time.contradicts': ({ stated, best, isSupported }) => {
    const says = stated.map(({ key, intervalS }) => `"${key}" means ${amountText(intervalS, 's', 4)}`);
    const why = isSupported
      ? 'agrees with the rest of the file and counts'
      : 'counts, as nothing else decides';
    return `The settings in the file contradict each other on the time between samples: ${says.join(', ')}. "${best}" ${why}. Check that the frequency makes sense.`;
  },
  'time.disagrees': ({ columnS, statedS, counts }) =>
    `The time column goes in steps of ${amountText(columnS, 's', 4)}, the settings in the file give ${amountText(statedS, 's', 4)}: ${counts === 'column' ? 'the time column' : 'the settings'} fits the record better and counts. Check that the frequency makes sense.`,
  'time.rateIgnored': 'The file says itself how fast it was sampled: the sample rate given is not used.',
  'time.uneven': (facts) =>
    facts.rows === 'kept on change'
      ? 'The file keeps a row only where a value changed: in between, the value before is held, as the file means it.'
      : `The samples are unevenly spaced in time: they were laid on even steps along straight lines, which may miss the wave by up to ${Math.max(0.1, facts.bendPercent).toFixed(1)} % of its span.`,
  'unit.assumed': ({ volts, amperes }) => {
    const assumed = [
      ...(volts.length === 0 ? [] : [`volts for ${volts.join(', ')}`]),
      ...(amperes.length === 0 ? [] : [`amperes for ${amperes.join(', ')}`]),
    ];
    return `The file names no unit. Assumed: ${assumed.join(', ')}.`;
  },
  'wave.overRange': ({ channel, unit, marked, samples, ends }) => {
    const at = ends.map((end) => `${rounded(end, 4)} ${unit}`.trim()).join(' and ');
    return `${channel} went beyond the scope's range: ${marked} of ${samples} samples hold a mark for that instead of a value. They count as cut off at ${at}; its RMS and peaks are really higher. Set more ${unit === 'A' ? 'amperes' : 'volts'} per division and save again.`;
  },
};
