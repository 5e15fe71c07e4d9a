/** The six numbers that every power of a single phase is made of. */
export interface PowerBasis {
  /** V1: RMS of the voltage's fundamental. */
  readonly fundamentalV: number;
  /** VH: RMS of all else in the voltage, DC and noise included. VH² = V² − V1². */
  readonly harmonicV: number;
  /** I1·cos θ1: RMS of the part of the current's fundamental in phase with the voltage's, signed. */
  readonly inPhaseA: number;
  /** I1·sin θ1: of the part a quarter cycle behind it; positive where the current lags. */
  readonly laggingA: number;
  /** IH: RMS of all else in the current. IH² = I² − I1². */
  readonly harmonicA: number;
  /** PH: the active power of all but the fundamentals, DC included. */
  readonly harmonicActiveW: number;
}
