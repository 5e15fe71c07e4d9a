import { assayCapture } from '../../src/assay/assayCapture.ts';
import { outletClaims, parseUnitClaim } from '../../src/bench/claims/parseUnitClaim.ts';
import type { MeasuredUnit } from '../../src/bench/measuredUnit.ts';
import { readCapture } from '../../src/read/readCapture.ts';
import { type SynthesisOptions, synthesise } from '../../src/synth/synthesise.ts';

/** A unit whose captures are synthetic waves at told loads, measured as a person's captures are. */
export function syntheticUnit(
  waves: readonly { readonly loadW: number; readonly wave: SynthesisOptions }[],
  claimTexts: readonly string[],
): MeasuredUnit {
  const claims = claimTexts.map(parseUnitClaim);
  return {
    ...{ name: 'a', label: 'Inverter A', claims, rule: 'guarded', steps: [], transfers: [], energy: [] },
    sweep: waves.map(({ loadW, wave }, i) => {
      const { bytes } = synthesise({
        cycles: 5.3,
        sampleRateHz: 20_000,
        noiseRatio: 0.005,
        seed: i + 1,
        ...wave,
      });
      const source = { file: `${loadW}w.csv`, sha256: '0'.repeat(64) };
      const [assay] = assayCapture(readCapture(bytes), source, { claims: outletClaims(claims).sweep });
      return { ...assay!, told: { loadW } };
    }),
  };
}
