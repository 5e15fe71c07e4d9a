import { JSDOM } from 'jsdom';
import { describe, expect, it } from 'vitest';
import { assayCapture } from '../../../src/assay/assayCapture.ts';
import { type ChangingAssay, drawStepSheet, stepSvg } from '../../../src/draw/step/drawStepSheet.ts';
import type { Capture } from '../../../src/read/capture.ts';
import { waveOfRms } from '../../../src/synth/changedWaves.ts';
import { course, type Evolution, evolvingWave } from '../../../src/synth/evolvingWave.ts';
import { sampleEvolvingWave } from '../../../src/synth/sampleWave.ts';
import { sineWave } from '../../../src/synth/sines.ts';
import { worded } from '../../../src/words/worded.ts';
import { itIsASheet } from '../itIsASheet.ts';

const { document } = new JSDOM().window;

/** An invented 230 V supply that changes on its way, measured. */
function changing(
  evolution: Omit<Evolution, 'wave' | 'frequencyHz'>,
  label = 'Inverter A',
  volts = 230,
): ChangingAssay {
  const wave = evolvingWave({ wave: waveOfRms(sineWave(), volts), frequencyHz: 50, ...evolution });
  const samples = sampleEvolvingWave(wave, {
    sampleRateHz: 10_000,
    durationS: 1.2,
    startS: -0.4,
    noiseRms: 1,
  });
  const capture: Capture = {
    channels: [{ name: label, quantity: 'voltage', unit: 'V', scale: 1, samples, gaps: [], stepSize: null }],
    sampleCount: samples.length,
    startS: -0.4,
    intervalS: 1e-4,
    layout: 'comma',
    notices: [],
  };
  const [assay] = assayCapture(capture, { file: `${label}.csv`, sha256: 'ab'.repeat(32) }, { label });
  if (assay?.dynamics == null) throw new Error('nothing changes');
  return { ...worded(assay), dynamics: worded(assay.dynamics) };
}

const dip = (atS: number, to: number) => ({ atS, to, transient: { by: -0.12, tauS: 0.04 } });
const hostile = `<script>alert(1)</script>\u202e\u0007 =1+1 ${'x'.repeat(400)}`;
const assays = {
  'a step': () => changing({ amplitude: course(1, [dip(0, 0.97)]) }),
  'two steps': () => changing({ amplitude: course(1, [dip(0, 0.97), { atS: 0.4, to: 1 }]) }),
  'five steps': () =>
    changing({
      amplitude: course(
        1,
        [-0.2, 0, 0.2, 0.4, 0.6].map((atS, i) => ({ atS, to: i % 2 === 0 ? 0.95 : 1 })),
      ),
    }),
  'a transfer': () => changing({ breaks: [{ fromS: 0.1, toS: 0.113 }] }),
  'an outage': () => changing({ breaks: [{ fromS: 0.1, toS: 0.4 }] }),
  'a cut-off': () => changing({ breaks: [{ fromS: 0.5, toS: 9 }] }),
  'no nominal': () => changing({ amplitude: course(1, [dip(0, 0.97)]) }, 'Odd', 60),
  'hostile names': () => changing({ amplitude: course(1, [dip(0, 0.97)]) }, hostile),
};

describe.each(Object.entries(assays))('drawStepSheet of %s', (_, make) => {
  const assay = make();
  const svg = drawStepSheet(document, assay);

  itIsASheet(svg, (page) => stepSvg(page, assay));

  it('says what to beware of and how to check it', () => {
    const all = [...svg.querySelectorAll('text')].map((text) => text.textContent).join('\n');
    expect(all).toContain('A measurement, not a certificate.');
    expect(all).toContain('abababab');
    expect(all).toContain('Mains voltage can kill.');
  });
});

it('a cut-off leads title, description and line to say', () => {
  const svg = drawStepSheet(document, assays['a cut-off']());
  expect(svg.querySelector('title')?.textContent).toMatch(/^Output lost at 0\.5.s/);
  expect(svg.querySelector('desc')?.textContent).toMatch(/^Output lost at 0\.5.s/);
  const texts = [...svg.querySelectorAll('text')].map((text) => text.textContent).join(' ');
  expect(texts).toMatch(/To say on camera Output lost at 0\.5.s/);
});

it('the changes of a cut-off tell the load and for how long it was held', () => {
  const assay = assays['a cut-off']();
  const held = { loadW: 1500, heldAtLeast: false, heldS: { value: 0.14, uncertainty: 0.001, budget: [] } };
  const under = {
    ...assay,
    dynamics: {
      ...assay.dynamics,
      events: assay.dynamics.events.map((event) => ({ ...event, ...held })),
    },
  } as ChangingAssay;
  const texts = [...drawStepSheet(document, under).querySelectorAll('text')].map((text) =>
    text.textContent?.replaceAll('\u00a0', ' '),
  );
  for (const row of ['Load', '1500 W', 'Load held for', '0.1400 ± 0.0010 s']) expect(texts).toContain(row);
});

it('the answer of a step names how far the voltage fell and how soon it was back', () => {
  const title = drawStepSheet(document, assays['a step']()).querySelector('title')?.textContent ?? '';
  expect(title).toMatch(
    /When the load came on, the voltage fell by \d+\.\d.%, give or take .*lower than before within \d+.ms\./,
  );
});
