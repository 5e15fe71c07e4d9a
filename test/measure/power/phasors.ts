/** One order: RMS and degrees, φ in √2·rms·sin(kωt + φ). */
export interface Phasor {
  readonly order: number;
  readonly rms: number;
  readonly deg: number;
}

export const radians = (deg: number): number => (deg * Math.PI) / 180;

/** The wave of some phasors at a phase of the fundamental, in cycles. */
export function phasorsAt(phasors: readonly Phasor[], cycles: number): number {
  return phasors.reduce(
    (sum, { order, rms, deg }) =>
      sum + Math.SQRT2 * rms * Math.sin(2 * Math.PI * order * cycles + radians(deg)),
    0,
  );
}

/**
 * The worked example of single-phase non-sinusoidal power: IEEE Std 1459 annex and A. E. Emanuel, "Power
 * Definitions and the Physical Mechanism of Power Flow", Wiley 2010. Inputs from memory; the phases 233° and
 * 288° follow from the printed P and Q of those orders.
 */
export const example: { readonly voltage: readonly Phasor[]; readonly current: readonly Phasor[] } = {
  voltage: [
    { order: 1, rms: 100, deg: 0 },
    { order: 3, rms: 8, deg: -70 },
    { order: 5, rms: 15, deg: 140 },
    { order: 7, rms: 5, deg: 20 },
  ],
  current: [
    { order: 1, rms: 100, deg: -30 },
    { order: 3, rms: 20, deg: -165 },
    { order: 5, rms: 15, deg: 233 },
    { order: 7, rms: 10, deg: 288 },
  ],
};

/** Its powers, recomputed from those inputs by the formulas of IEEE Std 1459 (numpy), to ten digits. */
export const examplePowers = {
  activeW: 8632.788554,
  apparentVA: 10517.492572,
  nonactiveVar: 6007.712691,
  fundamentalApparentVA: 10000,
  fundamentalActiveW: 8660.254038,
  fundamentalReactiveVar: 5000,
  nonfundamentalApparentVA: 3258.473569,
  currentDistortionVar: 2692.582404,
  voltageDistortionVar: 1772.004515,
  harmonicApparentVA: 477.126818,
  harmonicActiveW: -27.465484,
  harmonicDistortionVar: 476.335646,
} as const;

/** Its ratios, likewise. */
export const exampleRatios = {
  powerFactor: 0.820803,
  displacementPowerFactor: 0.866025,
  displacementDeg: 30,
  harmonicPollutionPercent: 32.5847,
} as const;

/** P and Q of each order, likewise, to the digits given. */
export const exampleOrders = [
  { order: 1, activeW: 8660.254, reactiveVar: 5000 },
  { order: 3, activeW: -13.945, reactiveVar: 159.391 },
  { order: 5, activeW: -11.776, reactiveVar: -224.692 },
  { order: 7, activeW: -1.745, reactiveVar: 49.97 },
] as const;
