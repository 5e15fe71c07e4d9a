/** Test captures of waves of known truth. */
export { captureLayouts, type LayoutName } from '../capture/writing/captureLayouts.ts';
export { writeCapture } from '../capture/writing/writeCapture.ts';
export { course } from '../signal/synthesis/course.ts';
export { type EvolvingWave, evolvingWave } from '../signal/synthesis/evolvingWave.ts';
export { sampleEvolvingWave } from '../signal/synthesis/sampleEvolvingWave.ts';
export { type ShapeName, waveNamed } from '../signal/synthesis/waveNamed.ts';
export { waveOfRms } from '../signal/synthesis/waveOfRms.ts';
export { type Synthesis, type SynthesisOptions, synthesise } from '../verdict/synthetic/synthesise.ts';
