import type { Notice } from '../../base/notice.ts';

/** The digitiser check says of clipping and range what the first look says too, and says it better. */
const SAID_BETTER: Readonly<Record<string, string>> = {
  'wave.clipped': 'digitiser.clipped',
  'resolution.coarse': 'digitiser.range',
};

/** Advice to use more of the range, which was exceeded, and doubts whether it was. */
const IN_RANGE = ['resolution.coarse', 'digitiser.range', 'wave.clipped', 'digitiser.clipped'];

/**
 * First-look doubts and the digitiser check's notices together, nothing said twice.
 *
 * @param isOverRange - whether the file itself says that the wave went beyond the range.
 */
export function withoutDoubles(
  doubts: readonly Notice[],
  checks: readonly Notice[],
  isOverRange: boolean,
): readonly Notice[] {
  const said = new Set(checks.map(({ code }) => code));
  const all = [...doubts.filter(({ code }) => !said.has(SAID_BETTER[code] ?? '')), ...checks];
  return isOverRange ? all.filter(({ code }) => !IN_RANGE.includes(code)) : all;
}
