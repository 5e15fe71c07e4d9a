import type { Face } from '../entry/evidence.ts';

// Put in by the build.
declare const SHIPPED_VERSION: string;
declare const SHIPPED_FACES: readonly Face[];

/** Version of the program, as its package says. */
export const version: string = SHIPPED_VERSION;

/** The sheets' typeface: its Latin and Greek letters, in both weights. */
export const faces: readonly Face[] = SHIPPED_FACES;
