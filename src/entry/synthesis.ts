/** Test captures of waves of known truth. */
export { captureLayouts, type LayoutName } from '../capture/writing/captureLayouts.ts';
export { type ShapeName, waveNamed } from '../signal/synthesis/waveNamed.ts';
export { type Synthesis, type SynthesisOptions, synthesise } from '../verdict/synthetic/synthesise.ts';
