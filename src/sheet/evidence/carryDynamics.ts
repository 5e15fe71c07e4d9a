import type { Assay } from '../../verdict/assay.ts';
import { instantSpan } from '../step/instantSpan.ts';
import { periodOf } from '../step/periodOf.ts';
import { type StepSubject, stepSubject } from '../step/stepSubject.ts';
import { columnExtremes } from './columnExtremes.ts';
import type { CarriedDynamics } from './evidence.ts';
import { orNull } from './orNull.ts';
import { roundedTo } from './roundedTo.ts';

const columns = 1000;
const digits = 5;

/** What changes along a record as a sheet carries it; of the voltage itself only what is looked at closely. */
export function carryDynamics({ result, dynamics }: Assay): CarriedDynamics | null {
  if (dynamics === null) return null;
  const { timeS, rmsHalfCycle, steps, events, curves, distortion } = dynamics;
  return {
    ...{ steps, events, curves, distortion },
    timeS: roundedTo(timeS, digits + 1),
    rmsHalfCycle: roundedTo(rmsHalfCycle, digits),
    instantaneous: instant(dynamics, stepSubject(result, dynamics), periodOf(result)),
  };
}

function instant(
  dynamics: NonNullable<Assay['dynamics']>,
  subject: StepSubject,
  periodS: number,
): CarriedDynamics['instantaneous'] {
  const span = instantSpan(subject, periodS);
  if (span === null || dynamics.instantaneous === null) return null;
  const { timeS, volts } = dynamics.instantaneous;
  const first = timeS.findIndex((t) => t >= span.fromS);
  const beyond = timeS.findIndex((t) => t > span.toS);
  if (first < 0) return { timeS: [], volts: [] };
  const t = timeS.subarray(first, beyond < 0 ? timeS.length : beyond);
  const v = volts.subarray(first, first + t.length);
  const kept = columnExtremes(t, [v], columns);
  return {
    timeS: roundedTo(
      Float64Array.from(kept, (i) => t[i]!),
      digits + 1,
    ),
    volts: roundedTo(
      Float64Array.from(kept, (i) => v[i]!),
      digits,
    ).map(orNull),
  };
}
