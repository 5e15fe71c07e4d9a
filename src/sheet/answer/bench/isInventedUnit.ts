import type { BenchUnit } from '../../../bench/benchDocument.ts';

/** True where the unit's names or notices say that its captures are invented. */
export function isInventedUnit({ name, label, points, notices }: BenchUnit): boolean {
  const told = [name, label, ...points.map(({ file }) => file), ...notices.map(({ message }) => message)];
  return told.some((text) => /invented|demonstration/i.test(text));
}
