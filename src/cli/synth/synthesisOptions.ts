import type { LayoutName, ShapeName, SynthesisOptions } from '../../entry/synthesis.ts';
import type { Harmonic } from './harmonic.ts';

/** The flags of `synth` as commander hands them over. */
export interface SynthFlags {
  readonly out: string;
  readonly rms: number;
  readonly peak?: number;
  readonly frequency: number;
  readonly rate: number;
  readonly cycles: number;
  readonly phase: number;
  readonly offset: number;
  readonly noise: number;
  readonly bits: number;
  readonly seed: number;
  readonly layout: LayoutName;
  readonly probe: number;
  readonly duty?: number;
  readonly edge: number;
  readonly tilt: number;
  readonly ringing?: number;
  readonly levels?: number;
  readonly angles?: readonly number[];
  readonly harmonic?: readonly Harmonic[];
  readonly ripple?: number;
  readonly rippleFrequency?: number;
  readonly clip?: number;
  readonly carrier?: number;
  readonly modulation?: number;
}

/** The flags in the units of the core: percent become ratios, degrees cycles. */
export function synthesisOptions(shape: ShapeName, flags: SynthFlags): SynthesisOptions {
  const { ripple = 2, rippleFrequency = 20_000, ringing } = flags;
  return {
    shape,
    rmsV: flags.rms,
    peakV: flags.peak,
    frequencyHz: flags.frequency,
    sampleRateHz: flags.rate,
    cycles: flags.cycles,
    startPhaseCycles: flags.phase / 360,
    offsetV: flags.offset,
    noiseRatio: flags.noise / 100,
    bits: flags.bits === 0 ? null : flags.bits,
    seed: flags.seed,
    layout: flags.layout,
    probeRatio: flags.probe,
    dutyRatio: ratio(flags.duty),
    edgeCycles: flags.edge / 100,
    tiltRatio: flags.tilt / 100,
    ringing: ringing === undefined ? undefined : { ratio: ringing / 100, order: 80, decayCycles: 0.012 },
    levels: flags.levels,
    anglesDeg: flags.angles,
    harmonics: flags.harmonic,
    ripple: { ratio: ripple / 100, order: rippleFrequency / flags.frequency },
    clipRatio: ratio(flags.clip),
    carrierRatio: flags.carrier,
    modulationRatio: flags.modulation,
  };
}

function ratio(percent: number | undefined): number | undefined {
  return percent === undefined ? undefined : percent / 100;
}
