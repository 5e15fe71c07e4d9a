import type { MeasureResult } from '../../verdict/measureDocument.ts';
import { fileName } from './fileName.ts';

/** True where label, file, channels or notices say that the capture is invented. */
export function isInvented({ label, file, capture, notices }: MeasureResult): boolean {
  const told = [
    label ?? '',
    fileName(file),
    ...capture.channels.map(({ name }) => name),
    ...notices.map(({ message }) => message),
  ];
  return told.some((text) => /invented|demonstration/i.test(text));
}
