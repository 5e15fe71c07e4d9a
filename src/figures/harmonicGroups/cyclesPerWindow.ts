/** Which window a wave is measured in, and whether the standard provides for its frequency. */
export interface CyclesPerWindow {
  readonly cycles: 10 | 12;
  /** False outside 42.5 to 69 Hz, where no standard says how many cycles to take. */
  readonly provided: boolean;
}

/**
 * Cycles of a window of about 200 ms: 10 in systems of 50 Hz, 12 in systems of 60 Hz.
 *
 * @param frequencyHz - as measured, > 0. It decides, at 55 Hz.
 * @param nominalFrequencyHz - decides where it is 50 or 60 Hz and the frequency lies in that system's range,
 * 42.5 to 57.5 Hz or 51 to 69 Hz.
 * @see IEC 61000-4-7:2002+A1:2008, 4.4.1; ranges of IEC 61000-4-30:2015, 5.1 (both from memory).
 */
export function cyclesPerWindow(frequencyHz: number, nominalFrequencyHz: number | null): CyclesPerWindow {
  const within50 = frequencyHz >= 42.5 && frequencyHz <= 57.5;
  const within60 = frequencyHz >= 51 && frequencyHz <= 69;
  const provided = within50 || within60;
  if (nominalFrequencyHz === 50 && within50) return { cycles: 10, provided };
  if (nominalFrequencyHz === 60 && within60) return { cycles: 12, provided };
  return { cycles: frequencyHz < 55 ? 10 : 12, provided };
}
