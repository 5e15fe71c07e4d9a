/** A load reaches a rating from this share of it on: heaters and lamps come in sizes. Common practice, no source. */
export const REACHED_SHARE = 0.95;

/** Usable share of the rated capacity that is taken as decent. Common practice, no source. */
export const DECENT_USABLE_SHARE_PERCENT = 85;
