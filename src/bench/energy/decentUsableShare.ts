/** Usable share of the rated capacity that is taken as decent. Common practice, no source. */
export const DECENT_USABLE_SHARE_PERCENT = 85;

/** Whether a usable share (DC energy over rating, not the outlet share) is what one may expect. */
export function isDecentUsableShare(usableSharePercent: number): boolean {
  return usableSharePercent >= DECENT_USABLE_SHARE_PERCENT;
}
