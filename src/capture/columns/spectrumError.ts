import { MeasureError } from '../../base/measureError.ts';

/** @param received - what showed that the axis is a frequency. */
export function spectrumError(received: string): MeasureError {
  return new MeasureError('file.spectrum', 'The file is a spectrum, not a waveform.', {
    expected: 'a voltage against time',
    received,
    advice: 'switch the math or FFT trace off and save the voltage channel itself',
  });
}
