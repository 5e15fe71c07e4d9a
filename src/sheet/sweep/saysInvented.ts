import type { BenchUnit } from '../../bench/benchDocument.ts';
import { fileName } from '../answer/fileName.ts';

/** True where label, files, notes or notices say that a unit's captures are invented. */
export function saysInvented({ label, points, notices }: BenchUnit): boolean {
  const told = [
    label,
    ...points.flatMap(({ file, note }) => [fileName(file), note ?? '']),
    ...notices.map(({ message }) => message),
  ];
  return told.some((text) => /invented|demonstration/i.test(text));
}
