import type { AssayNotices } from '../../assay/notices.ts';
import { rounded } from '../../base/amountText.ts';
import { errorOf } from '../../base/measureError.ts';
import { errorWords } from '../errors/errorWords.ts';
import type { SentencesOf } from './sentences.ts';

/** What is doubted of a capture as a whole. */
export const assayed: SentencesOf<AssayNotices> = {
  'channels.currents': ({ channel, left }, option) =>
    `${channel} is taken for the load’s current, the first of ${1 + left.length}; not looked at: ${left.join(', ')} (${option('current')} NAME).`,
  'channels.unmeasured': ({ errors }, option) =>
    `Not measured: ${errors.map((error) => errorWords(errorOf(error), option).message.replace(/\.$/, '')).join('; ')}.`,
  'current.noPeriod': ({ channel }) =>
    `${channel} holds no current that repeats: its own figures are left out.`,
  'load.differs': ({ words, from, measured }) =>
    `${from === 'told' ? 'Told was' : 'The file’s name says'} ${words}, measured was ${measured}: check the load, the scale of the current, and whether this is the capture meant.`,
  'phase.jump': ({ atS, degrees }) =>
    `At ${rounded(atS, 3)} s the voltage goes on ${Math.abs(degrees).toFixed(0)}° ${degrees > 0 ? 'ahead of' : 'behind'} where it was, without a break: a jump of phase, no load step.`,
  'span.steady': ({ by, fromS, toS }) => {
    const why = {
      current:
        'The load’s current steps or drifts: the figures describe the longest stretch on which voltage and current are steady',
      voltage: 'The voltage steps, breaks off or drifts: the figures describe its longest steady stretch',
    }[by];
    return `${why}, ${rounded(fromS, 5)} s to ${rounded(toS, 5)} s.`;
  },
};
