/**
 * The sheet's inks. Blue against ochre or crimson keeps apart for every common kind of colour vision, and each
 * pair that meets in one panel differs in lightness too, so that a grey print reads the same.
 */
export const palette = {
  paper: '#fdfcf8',
  ink: '#1c2126',
  /** Secondary text; 5.9 : 1 on the paper. */
  soft: '#5a636b',
  /** Axes and hairlines. */
  line: '#b9bfc3',
  /** What was measured. */
  wave: '#16477a',
  /** A bar inside its limit: paler than one outside, so that a grey print tells them apart. */
  bar: '#86a3c0',
  /** What it is held against. */
  ideal: '#e2bf7f',
  idealText: '#8a6414',
  /** Outside a limit, and nothing else. */
  outside: '#a3153a',
} as const;

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
