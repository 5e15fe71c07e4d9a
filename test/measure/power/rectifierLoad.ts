/** A diode bridge with a capacitor and a load on it, fed through a resistance: what power supplies look like. */
export interface RectifierLoad {
  readonly peakV: number;
  readonly frequencyHz: number;
  readonly seriesOhm: number;
  readonly loadOhm: number;
  readonly capacitanceF: number;
}

/**
 * Reference non-linear load of IEC 62040-3, annex E (from memory): Uc = 1.22 U, R1 = Uc² / (0.66 S),
 * Rs = 0.04 U² / S, C = 7.5 / (f R1).
 */
export function referenceLoad(ratedVA: number, rmsV: number, frequencyHz: number): RectifierLoad {
  const loadOhm = (1.22 * rmsV) ** 2 / (0.66 * ratedVA);
  return {
    peakV: Math.SQRT2 * rmsV,
    frequencyHz,
    seriesOhm: (0.04 * rmsV ** 2) / ratedVA,
    loadOhm,
    capacitanceF: 7.5 / (frequencyHz * loadOhm),
  };
}

/**
 * Line current in the steady state, on a stiff sine that starts at a rising zero: ideal diodes, the
 * capacitor's voltage by classical Runge-Kutta of fourth order.
 *
 * @param stepsPerCycle - a hundred times the samples a cycle wanted, so that the kinks where the diodes take
 * over cost nothing that shows.
 * @returns one cycle, `stepsPerCycle` values, in A.
 */
export function rectifierCycle(load: RectifierLoad, stepsPerCycle: number): Float64Array {
  const { peakV, frequencyHz, seriesOhm, loadOhm, capacitanceF } = load;
  const stepS = 1 / (frequencyHz * stepsPerCycle);
  const rectified = (timeS: number): number => Math.abs(peakV * Math.sin(2 * Math.PI * frequencyHz * timeS));
  const charging = (timeS: number, capacitorV: number): number =>
    Math.max(0, (rectified(timeS) - capacitorV) / seriesOhm);
  const slope = (timeS: number, capacitorV: number): number =>
    (charging(timeS, capacitorV) - capacitorV / loadOhm) / capacitanceF;
  let capacitorV = 0.9 * peakV;
  const current = new Float64Array(stepsPerCycle);
  // R1·C is 7.5 cycles, and charging is faster: 60 cycles leave under e⁻⁸ of the start's few per cent.
  for (let n = 0; n < 60 * stepsPerCycle; n++) {
    const at = (n % stepsPerCycle) * stepS;
    current[n % stepsPerCycle] = (at < 0.5 / frequencyHz ? 1 : -1) * charging(at, capacitorV);
    const k1 = slope(at, capacitorV);
    const k2 = slope(at + stepS / 2, capacitorV + (stepS / 2) * k1);
    const k3 = slope(at + stepS / 2, capacitorV + (stepS / 2) * k2);
    const k4 = slope(at + stepS, capacitorV + stepS * k3);
    capacitorV += (stepS / 6) * (k1 + 2 * k2 + 2 * k3 + k4);
  }
  return current;
}
