/** Lengths that statistics of supply standards take at the least, in seconds. */
export const THREE_SECONDS_S = 3;
export const TEN_SECONDS_S = 10;
export const TEN_MINUTES_S = 600;
export const A_WEEK_S: number = 7 * 24 * 3600;
