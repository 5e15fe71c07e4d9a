import type { Notice } from '../../base/notice.ts';

/** The digitiser check says of clipping and range what the first look says too, and says it better. */
const SAID_BETTER: Readonly<Record<string, string>> = {
  'wave.clipped': 'digitiser.clipped',
  'resolution.coarse': 'digitiser.range',
};

/** First-look doubts and the digitiser check's notices together, nothing said twice. */
export function withoutDoubles(doubts: readonly Notice[], checks: readonly Notice[]): readonly Notice[] {
  const said = new Set(checks.map(({ code }) => code));
  return [...doubts.filter(({ code }) => !said.has(SAID_BETTER[code] ?? '')), ...checks];
}
