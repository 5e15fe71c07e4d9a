import type { DynamicCurve } from '../../verdict/dynamics/dynamicCurve.ts';

/** A curve's name short enough to stand beside its line: the standard, and the class where there are several. */
export function curveName({ standard, name }: DynamicCurve): string {
  const grade = /\b(?:G\d|curve \d)\b/.exec(name)?.[0];
  return grade === undefined ? standard : `${standard} ${grade}`;
}
