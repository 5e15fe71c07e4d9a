/** Test captures of waves of known truth. */

export { waveOfRms } from '../synth/changedWaves.ts';
export { course, type EvolvingWave, evolvingWave } from '../synth/evolvingWave.ts';
export { sampleEvolvingWave } from '../synth/sampleWave.ts';
export { type Synthesis, type SynthesisOptions, synthesise } from '../synth/synthesise.ts';
export { type ShapeName, waveNamed } from '../synth/waveNamed.ts';
export { captureLayouts, type LayoutName, writeCapture } from '../synth/writeCapture.ts';
