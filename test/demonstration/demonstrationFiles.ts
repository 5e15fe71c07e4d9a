import { type StatedTruth, synthesise } from '../../src/synth/synthesise.ts';
import { encodedUtf8 } from '../../src/synth/writeCapture.ts';
import { benchEvening, type DemonstrationCapture } from './benchEvening.ts';
import { changingCapture, changingEvening } from './changingEvening.ts';
import { eveningPlan } from './eveningPlan.ts';

/** Everything in the folder `captures`, by file name. */
export function demonstrationFiles(): ReadonlyMap<string, Uint8Array> {
  const made = benchEvening.map((capture) => {
    const comment = `Invented demonstration data, no real inverter: ${capture.label}, ${capture.load}`;
    return { capture, ...synthesise({ ...capture.wave, comment }) };
  });
  return new Map([
    ...made.map(({ capture, bytes }) => [capture.file, bytes] as const),
    ...changingEvening.map((capture) => [capture.file, changingCapture(capture)] as const),
    ['plan.yaml', encodedUtf8(eveningPlan)],
    ['README.md', encodedUtf8(readme(made))],
  ]);
}

type Made = { readonly capture: DemonstrationCapture; readonly truth: StatedTruth };

function readme(made: readonly Made[]): string {
  return `# Demonstration captures

All of this is invented: there is no such library, no such evening and no such inverter. The waves are
computed, so that their true figures are known. \`npm run demonstration\` makes these files anew, the same
byte for byte.

The story: before it lends them, a tool-lending library tests three donated inverters, each at rising loads.
Every capture is as a bench oscilloscope saves it: 8 bits, some noise, a small offset, no whole number of
cycles, and a frequency a little off. Each is laid out in another way.

The figures below are those of the wave itself, before noise and quantisation, DC included.

| file | what it is | V | Hz | crest factor | THD to order 50, % | kind |
|---|---|---|---|---|---|---|
${made.map(tableRow).join('\n')}

Captures on which something changes, or that show the load's current too:

| file | what it is |
|---|---|
${changingEvening.map(({ file, label, load, about }) => `| ${file} | ${label}, ${load}. ${about} |`).join('\n')}

plan.yaml makes one bench test of them all: \`sineassay bench captures/plan.yaml\`.

## To measure them

\`\`\`
${made.map(({ capture }) => commandLine(capture)).join('\n')}
\`\`\`
`;
}

function tableRow({ capture, truth }: Made): string {
  const figures = [
    truth.rmsV.toFixed(2),
    truth.frequencyHz?.toFixed(2),
    truth.crestFactor?.toFixed(3),
    truth.thdPercent?.toFixed(2),
    truth.kind,
  ];
  return `| ${capture.file} | ${capture.label}, ${capture.load}. ${capture.about} | ${figures.join(' | ')} |`;
}

function commandLine({ file, label, load, claims, wave }: DemonstrationCapture): string {
  const options = [
    ...(wave.probeRatio === undefined ? [] : [`--scale ${wave.probeRatio}`]),
    `--label "${label}"`,
    `--load "${load}"`,
    ...claims.map((claim) => `--claim "${claim}"`),
  ];
  return `sineassay measure captures/${file} ${options.join(' ')}`;
}
