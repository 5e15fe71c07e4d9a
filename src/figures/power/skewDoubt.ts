/**
 * How far probe and clamp may be apart in time where nobody says, in seconds each way. A first-order clamp
 * of 20 kHz, the slowest worth putting on a scope, is 1 / (2π · 20 kHz) = 8 µs late. Common practice, no source.
 */
export const ASSUMED_SKEW_DOUBT_S = 10e-6;

/** The same where the skew was told, as read off a resistive load. Common practice, no source. */
export const TOLD_SKEW_DOUBT_S = 1e-6;
