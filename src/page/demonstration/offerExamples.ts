import {
  course,
  type EvolvingWave,
  evolvingWave,
  sampleEvolvingWave,
  waveNamed,
  waveOfRms,
  writeCapture,
} from '../../entry/synthesis.ts';
import type { NamedFile } from '../desk/sitting.ts';
import { nothingTold, type Told } from '../told/told.ts';

/** Lists the examples; each is made when somebody asks for it. */
export function offerExamples(list: HTMLElement, add: (file: NamedFile) => void): void {
  for (const { words, make } of examples) {
    const button = list.ownerDocument.createElement('button');
    button.type = 'button';
    button.className = 'link';
    button.textContent = words;
    button.addEventListener('click', () => {
      const { name, bytes, told } = make();
      add({ name, file: new Blob([bytes as Uint8Array<ArrayBuffer>]), told: { ...nothingTold, ...told } });
    });
    const item = list.ownerDocument.createElement('li');
    item.append(button);
    list.append(item);
  }
}

/** A capture that the page offers to who has none. */
interface Example {
  /** What it is of. */
  readonly words: string;
  readonly make: () => { readonly name: string; readonly bytes: Uint8Array; readonly told: Partial<Told> };
}

const UNIT = 'Donated inverter (invented)';
const claims = 'pure sine\n120 V ±5 %\nTHD < 3 %';

const goodWave = waveNamed.harmonics({
  harmonics: [
    { order: 3, ratio: 0.011, phaseRad: 0.4 },
    { order: 5, ratio: 0.007, phaseRad: -0.8 },
  ],
});

/** A sine that holds what the box says, one that is none, and a load that is switched on. Made on the spot. */
const examples: readonly Example[] = [
  {
    words: 'A sine at 300 W, as the box claims',
    make: () => ({
      name: 'example-sine-300w.csv',
      bytes: recorded([volts(steady(waveOfRms(goodWave, 119.4)), 11)], { startS: -0.05, durationS: 0.1 }),
      told: { label: UNIT, load: '300 W resistive', claims },
    }),
  },
  {
    words: 'A “pure sine” that is a modified one',
    make: () => ({
      name: 'example-modified-300w.csv',
      bytes: recorded(
        [volts(steady(waveOfRms(waveNamed.modified({ dutyRatio: 0.58, edgeCycles: 0.004 }), 116)), 12)],
        { startS: -0.05, durationS: 0.1 },
      ),
      told: { label: UNIT, load: '300 W resistive', claims },
    }),
  },
  {
    words: 'A 600 W heater switched on, with its current',
    make: () => {
      const step = { atS: 0, to: 117.1, transient: { by: -9, tauS: 0.03 } };
      const voltage = under(course(121.5, [step]));
      const current = under(course(0.02, [{ atS: 0, to: 5.12, transient: { by: -0.39, tauS: 0.03 } }]));
      return {
        name: 'example-step-600w.csv',
        bytes: recorded(
          [
            volts(voltage, 13),
            { name: 'Clamp', unit: 'A', wave: current, noiseRms: 0.03, fullScale: 10, seed: 14 },
          ],
          { startS: -0.2, durationS: 0.6 },
        ),
        told: { label: UNIT, load: 'no load, then 600 W resistive', claims: '120 V ±5 %' },
      };
    },
  },
];

interface Recorded {
  readonly name: string;
  readonly unit: string;
  readonly wave: EvolvingWave;
  readonly noiseRms: number;
  readonly fullScale: number;
  readonly seed: number;
}

const steady = (wave: ReturnType<typeof waveOfRms>): EvolvingWave =>
  evolvingWave({ wave, frequencyHz: 59.98, phaseCycles: 0.27 });
const under = (amplitude: ReturnType<typeof course>): EvolvingWave =>
  evolvingWave({ wave: waveOfRms(goodWave, 1), frequencyHz: 59.98, amplitude, phaseCycles: 0.27 });
const volts = (wave: EvolvingWave, seed: number): Recorded => ({
  ...{ name: 'Output', unit: 'V', wave, noiseRms: 0.9, fullScale: 200, seed },
});

function recorded(
  [first, ...others]: readonly [Recorded, ...Recorded[]],
  { startS, durationS }: { readonly startS: number; readonly durationS: number },
): Uint8Array {
  const sampleRateHz = 20_000;
  const sampled = ({ name, unit, wave, noiseRms, fullScale, seed }: Recorded) => ({
    ...{ name, unit },
    samples: sampleEvolvingWave(wave, {
      ...{ sampleRateHz, startS, durationS, noiseRms, seed },
      converter: { bits: 8, fullScale },
    }),
  });
  return writeCapture('comma', {
    channels: [sampled(first), ...others.map(sampled)],
    startS,
    intervalS: 1 / sampleRateHz,
    comment: 'Invented demonstration data, no real inverter: a tool-lending library tests what it is given',
  });
}
