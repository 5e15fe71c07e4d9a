import type { Acquisition } from '../capture.ts';
import type { Setting } from './setting.ts';

const MODE_KEY = /^(acq\w*( mode| type)?|sampling mode|sample mode|mode)$/;

const MODES: readonly (readonly [pattern: RegExp, mode: Acquisition])[] = [
  [/peak/i, 'peak detect'],
  [/aver/i, 'average'],
  [/hi(gh)?[\s-]?res/i, 'high resolution'],
  [/envel/i, 'envelope'],
  [/sample|normal|real/i, 'sample'],
];

/** How the instrument made its samples, or null where the settings don't say. */
export function acquisitionSetting(settings: readonly Setting[]): Acquisition | null {
  const value = settings.find((setting) => MODE_KEY.test(setting.key))?.values[0] ?? '';
  return MODES.find(([pattern]) => pattern.test(value))?.[1] ?? null;
}
