import { captureLayouts, type LayoutName } from './captureLayouts.ts';
import type { WrittenCapture } from './writtenCapture.ts';

/**
 * The bytes of a capture file.
 *
 * @remarks Values keep seven significant digits of the largest, times a thousandth of the interval.
 * @throws RangeError where the channels differ in length or the interval is not positive.
 */
export function writeCapture(layout: LayoutName, capture: WrittenCapture): Uint8Array {
  const { channels, intervalS } = capture;
  if (channels.some(({ samples }) => samples.length !== channels[0].samples.length)) {
    throw new RangeError('the channels differ in length');
  }
  if (!(intervalS > 0)) throw new RangeError(`the interval must be positive, not ${intervalS}`);
  const { lines, lineEnd, encoded } = captureLayouts[layout];
  return encoded(
    lines(capture)
      .map((line) => line + lineEnd)
      .join(''),
  );
}
