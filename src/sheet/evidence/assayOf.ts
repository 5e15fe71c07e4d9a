import type { Assay, Dynamics, Trace } from '../../verdict/assay.ts';
import type { CarriedDynamics, CarriedTrace, OneCapture } from './evidence.ts';
import { orNan } from './orNull.ts';

/** The assay that a sheet's picture is drawn from. Budgets are not carried: no picture shows them. */
export function assayOf({ result, method, trace, dynamics }: OneCapture): Assay {
  return { result, method, trace: traceOf(trace), dynamics: dynamicsOf(dynamics), budgets: [] };
}

function traceOf({ timeS, wave, ideal, unit }: CarriedTrace): Trace {
  const samples = Float64Array.from(wave, orNan);
  return {
    ...{ unit, wave: samples },
    timeS: Float64Array.from(timeS),
    ideal: Float64Array.from(ideal),
    residual: samples.map((v, i) => v - (ideal[i] ?? Number.NaN)),
  };
}

function dynamicsOf(carried: CarriedDynamics | null): Dynamics | null {
  if (carried === null) return null;
  const { timeS, rmsHalfCycle, instantaneous, ...others } = carried;
  return {
    ...others,
    timeS: Float64Array.from(timeS),
    rmsHalfCycle: Float64Array.from(rmsHalfCycle),
    instantaneous:
      instantaneous === null
        ? null
        : {
            timeS: Float64Array.from(instantaneous.timeS),
            volts: Float64Array.from(instantaneous.volts, orNan),
          },
  };
}
