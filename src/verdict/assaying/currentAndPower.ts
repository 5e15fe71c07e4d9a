import { MeasureError } from '../../base/measureError.ts';
import type { Notice } from '../../base/notice.ts';
import type { Capture, Channel, SampleRange } from '../../capture/capture.ts';
import type { MeasuredWave, WaveInput } from '../../figures/measuredWave.ts';
import { type MeasureOptions, measureWave } from '../../figures/measureWave.ts';
import { measurePower } from '../../figures/power/measurePower.ts';
import type { PowerFigures } from '../../figures/power/powerFigures.ts';
import { ASSUMED_INSTRUMENT, type Instrument } from '../../figures/uncertainty/instrument.ts';
import type { ScaleSource } from '../../figures/uncertainty/scaleComponents.ts';
import { type LoadKind, loadKind } from '../loadKind/loadKind.ts';
import type { CurrentFigures, PowerDocument } from '../measureDocument.ts';
import { currentFigures } from './channelFigures.ts';
import { waveInput } from './waveInput.ts';
import { withoutBudget } from './withoutBudgets.ts';

export interface CurrentInput {
  readonly capture: Capture;
  readonly voltage: MeasuredWave;
  readonly current: Channel;
  readonly instrument: Instrument;
  readonly scaleSource: ScaleSource;
  readonly orders: number;
  /** The part of the record that `voltage` is; absent: all of it. */
  readonly stretch?: SampleRange | undefined;
  /** How much later the current's chain shows an event than the voltage's; absent: not told. */
  readonly skewS?: number;
}

/** What a current channel adds to a result. */
export interface CurrentAndPower {
  readonly current?: CurrentFigures;
  readonly power?: PowerDocument;
  readonly loadKind?: LoadKind;
  readonly notices: readonly Notice[];
}

/**
 * The current of a load, the power that it takes, and what kind of load it is.
 *
 * @remarks With nothing connected a current channel holds noise: its power still stands (about nothing), while
 * its own figures, which need a period, are left out with a notice.
 */
export function currentAndPower(input: CurrentInput): CurrentAndPower {
  const { capture, voltage, current, stretch, instrument, scaleSource, orders, skewS } = input;
  if (voltage.periodic === null) return { notices: [] };
  // An offset told in volts is the voltage channel's.
  const currentInstrument = { ...instrument, offsetV: ASSUMED_INSTRUMENT.offsetV };
  const samples = waveInput(capture, current, stretch);
  const options = { orders, instrument: currentInstrument, omega: voltage.periodic.fit.omega };
  const wave = waveThatRepeats(samples, options);
  const power = measurePower({
    voltage: { ...voltage, periodic: voltage.periodic },
    // Measured over all of them, its fit serves the power too.
    current:
      wave?.periodic?.fit.residual.length === samples.samples.length
        ? { ...samples, fit: wave.periodic.fit }
        : samples,
    ...(skewS === undefined ? {} : { skewS }),
    voltageChain: { instrument, scaleSource },
    currentChain: { instrument: currentInstrument },
  });
  const document = powerDocument(current.name, power);
  if (wave === null || wave.periodic === null) {
    const message = `${current.name} holds no current that repeats: its own figures are left out.`;
    return { power: document, notices: [...power.notices, { code: 'current.noPeriod', message }] };
  }
  return {
    current: currentFigures(current.name, wave.figures),
    power: document,
    loadKind: loadKind({ power, voltage: voltage.figures, current: wave.figures }),
    notices: [...power.notices, ...ownDoubts(current, wave.figures.notices, voltage.figures.notices)],
  };
}

/** Null where nothing is found that could be measured. */
function waveThatRepeats(input: WaveInput, options: MeasureOptions): MeasuredWave | null {
  try {
    return measureWave(input, options);
  } catch (error) {
    if (!(error instanceof MeasureError)) throw error;
    return null;
  }
}

/** Doubts about the current's own wave, named as such; what the voltage has too is said once. */
function ownDoubts(
  { name }: Channel,
  doubts: readonly Notice[],
  ofVoltage: readonly Notice[],
): readonly Notice[] {
  const said = new Set(ofVoltage.map(({ code }) => code));
  return doubts
    .filter(({ code }) => !said.has(code))
    .map(({ code, message }) => ({ code, message: `${name}: ${message}` }));
}

function powerDocument(channel: string, { notices: _, ...power }: PowerFigures): PowerDocument {
  const bare = Object.entries(power).map(([key, value]: [string, unknown]) => [
    key,
    typeof value === 'object' && value !== null && 'uncertainty' in value
      ? withoutBudget(value as PowerFigures['activeW'])
      : value,
  ]);
  return { channel, ...(Object.fromEntries(bare) as Omit<PowerFigures, 'notices'>) };
}
