import { amountText } from '../../base/amountText.ts';
import type { LogNotices } from '../../energy/log/notices.ts';
import type { SentencesOf } from './sentences.ts';

/** What a person must know of how an energy log was read. */
export const logged: SentencesOf<LogNotices> = {
  'clock.back': ({ lines, times }) =>
    `The clock is set back ${times === 1 ? 'once' : `${times} times`} (line ${lines.join(', ')}${times > lines.length ? ' …' : ''}): what comes before and behind is not joined.`,
  'clock.equal': ({ rows, stepS }) =>
    `${rows === 1 ? 'One row has' : `${rows} rows have`} the same time as the row before: they are spread evenly over the ${amountText(stepS, 's')} that the clock tells apart.`,
};
