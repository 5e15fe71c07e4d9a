/** What the command's exit code tells a script. */
export const exitCodes = {
  /** Measured, and every claim given holds. */
  ok: 0,
  /** A claim fails, probably fails, or can't be judged. */
  claim: 1,
  /** Wrong words on the command line, or a file that could not be read or measured. */
  usage: 2,
  /** A defect of this program. */
  defect: 3,
} as const;
