import { isAbsolute, join } from 'node:path';

/** Where a path that stands in a plan leads, seen from where the command was called. */
export function pathFrom(folder: string, path: string): string {
  return isAbsolute(path) ? path : join(folder, path);
}
