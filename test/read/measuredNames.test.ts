import { expect, test } from 'vitest';
import { readCapture } from '../../src/read/readCapture.ts';
import { measuredNames } from '../../src/read/rescaleCapture.ts';
import { selectVoltageChannels } from '../../src/read/selectChannel.ts';
import { sineChannels } from '../cli/smallCapture.ts';

const capture = readCapture(
  sineChannels([
    { name: 'Clamp', unit: 'A', rms: 2 },
    { name: 'L', unit: 'V', rms: 60 },
    { name: 'N', unit: 'V', rms: 60 },
  ]),
);

test('measuredNames(capture, measured) names what selectVoltageChannels takes', () => {
  for (const measured of [undefined, 'N', 'all', 'Clamp']) {
    expect(measuredNames(capture, measured)).toEqual(
      selectVoltageChannels(capture, measured).channels.map(({ name }) => name),
    );
  }
});

test('of a difference both are meant; where there are currents only, the first', () => {
  expect(measuredNames(capture, 'L-N')).toEqual(['L', 'N']);
  const currents = readCapture(sineChannels([{ name: 'Clamp', unit: 'A', rms: 2 }]));
  expect(measuredNames(currents, undefined)).toEqual(['Clamp']);
});

test('a name that no channel bears is refused', () => {
  expect(() => measuredNames(capture, 'CH9')).toThrow(expect.objectContaining({ code: 'channel.unknown' }));
});
