import { MeasureError } from '../../entry/measuring.ts';
import { harmonicLimits, limitTables, mainFigures } from '../../entry/sections.ts';
import type { Entry } from '../desk/sitting.ts';
import type { Ask } from '../desk/workerClient.ts';
import { harmonicsView } from '../harmonics/harmonicsView.ts';
import { waveView } from '../wave/waveView.ts';
import type { Measured, MeasuredChannel } from '../worker/requests.ts';

interface Pictures {
  readonly show: (entry: Entry, measured: Measured, channel: MeasuredChannel) => void;
  /** Moves the picture of the wave to a time. */
  readonly goTo: (timeS: number) => void;
}

/** The pictures that a person can look into: wave and harmonics. */
export function picturesOf(document: Document, ask: Ask): Pictures {
  const wave = waveView(document.getElementById('wave')!);
  const harmonics = harmonicsView(document.getElementById('harmonics')!);
  /** What the wave's picture is of: told anew, it stays where it is. */
  let before = '';
  return {
    show: ({ id }, { startS, endS, intervalS }, channel) => {
      const { result, zeroS } = channel;
      const figures = mainFigures(result);
      const name = figures?.channel ?? '';
      const periodS = figures?.frequencyHz.value ? 1 / figures.frequencyHz.value : null;
      const now = `${id}:${name}`;
      wave.take(
        {
          channel: name,
          unit: figures?.unit ?? 'V',
          record: [startS, endS],
          intervalS,
          periodS,
          twoCycles: periodS === null ? [startS, endS] : [zeroS, zeroS + 2 * periodS],
          ideal: idealSine(channel),
          columns: (fromS, toS, count) =>
            ask('columns', { id, channel: name, fromS, toS, count }).catch(gone),
        },
        now === before,
      );
      before = now;
      const isVolts = figures?.unit === 'V';
      const limits = isVolts ? harmonicLimits(limitTables(), result.nominal) : null;
      harmonics.take(figures?.harmonics ?? [], limits, figures?.frequencyHz.value ?? null);
    },
    goTo: (timeS) => wave.goTo(timeS),
  };
}

/** The capture may have been taken away, or be measured as another channel, since it was asked for. */
function gone(problem: unknown): null {
  if (problem instanceof MeasureError) return null;
  throw problem;
}

/** The sine of a channel's frequency, RMS without DC, mean and phase; null where it has none. */
function idealSine({ result, zeroS }: MeasuredChannel): ((timeS: number) => number) | null {
  const figures = mainFigures(result);
  if (figures === null) return null;
  const { frequencyHz, rms, mean } = figures;
  if (frequencyHz.value === null || rms.value === null) return null;
  const middle = mean.value ?? 0;
  const peak = Math.SQRT2 * Math.sqrt(Math.max(0, rms.value ** 2 - middle ** 2));
  const omega = 2 * Math.PI * frequencyHz.value;
  return (timeS) => middle + peak * Math.sin(omega * (timeS - zeroS));
}
