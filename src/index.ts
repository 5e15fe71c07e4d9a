/**
 * The core of Sineassay: from the bytes of a capture to its answer, its document and its sheet. What needs only a
 * part of it imports that entry, and so loads neither the rest nor the packages of the rest.
 */
export * from './entry/benching.ts';
export * from './entry/checking.ts';
export * from './entry/comparing.ts';
export * from './entry/drawing.ts';
export * from './entry/energy.ts';
export * from './entry/energyGrammar.ts';
export * from './entry/evidence.ts';
export * from './entry/grammar.ts';
export * from './entry/measuring.ts';
export * from './entry/pages.ts';
export * from './entry/plans.ts';
export * from './entry/synthesis.ts';
