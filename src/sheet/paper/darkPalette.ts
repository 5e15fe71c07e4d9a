import type { palette } from './palette.ts';

/** The inks of a sheet or page, by what they stand for. */
export type Inks = Readonly<Record<keyof typeof palette, string>>;

/** The same inks on dark paper: the same hues with the same meaning; text 4.5 : 1 or better. */
export const darkPalette: Inks = {
  paper: '#15181b',
  ink: '#e9e6de',
  soft: '#b4bcc2',
  line: '#474e54',
  wave: '#8fb9e6',
  bar: '#426385',
  ideal: '#846628',
  idealText: '#dcb468',
  outside: '#ff7a90',
};
