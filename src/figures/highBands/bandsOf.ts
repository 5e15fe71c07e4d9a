/** What a band of frequencies holds. */
export interface HighBand {
  readonly centreHz: number;
  readonly widthHz: number;
  /** Of all lines above the band's lower edge, up to and with its upper edge; in U. */
  readonly rms: number;
}

/** Where the bands begin; below it there are harmonic orders. */
export const BANDS_FROM_HZ = 2000;
/** To here bands are 200 Hz wide, above it 2 kHz. */
const NARROW_TO_HZ = 9000;
/** Where the bands end: the 2 to 150 kHz of the standards, to the end of its last band. */
export const BANDS_TO_HZ = 151_000;

/**
 * Bands of 200 Hz from 2 to 9 kHz, centred on 2100, 2300, … 8900 Hz, then of 2 kHz from 9 to 151 kHz, each the
 * root of the sum of its lines' squares. The last is cut at half the sample rate.
 *
 * @param squares - squared RMS of line k at k·lineHz, in U².
 * @param cycles - of the window: of one cycle every line is a harmonic order, whose frequency is known.
 * @param halfRateHz - half the sample rate.
 * @returns ascending, without a hole; none where half the sample rate is below 2 kHz.
 * @remarks A line on an edge belongs to the band below: 2200 Hz to the one centred on 2100. Where no line stands on an
 * edge, what lies there shows most in the line nearest to it, so that this one counts as on it. Up to 9 kHz as in
 * annex B of the standard; which line spacing goes with which of its editions is not verified, so the lines are
 * the window's own. Above 9 kHz the width is ours.
 * @see IEC 61000-4-7:2002+A1:2008, annex B (from memory).
 */
export function bandsOf(
  squares: Float64Array,
  lineHz: number,
  halfRateHz: number,
  cycles: number,
): readonly HighBand[] {
  const bands: HighBand[] = [];
  const end = Math.min(BANDS_TO_HZ, halfRateHz);
  let k = firstAbove(BANDS_FROM_HZ / lineHz, cycles);
  for (let from = BANDS_FROM_HZ; from < end; ) {
    const to = Math.min(end, from + (from < NARROW_TO_HZ ? 200 : 2000));
    const next = to < halfRateHz ? firstAbove(to / lineHz, cycles) : squares.length;
    let sum = 0;
    for (; k < Math.min(next, squares.length); k++) sum += squares[k]!;
    bands.push({ centreHz: (from + to) / 2, widthHz: to - from, rms: Math.sqrt(sum) });
    from = to;
  }
  return bands;
}

/** The first line beyond an edge that stands at `edge` lines; half-way between two, the upper is still on it. */
function firstAbove(edge: number, cycles: number): number {
  const nearest = Math.floor(edge + 0.5);
  // Rounding of the frequency moves an order by less than a hundredth of a spacing.
  const isOrderAbove = cycles === 1 && nearest > edge + 0.01;
  return isOrderAbove ? nearest : nearest + 1;
}
