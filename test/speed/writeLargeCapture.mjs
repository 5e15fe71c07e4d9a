import { closeSync, openSync, writeSync } from 'node:fs';

const INTERVAL_S = 2e-6;
const BLOCK_ROWS = 20_000;

/** Writes an invented capture of a 50 Hz sine: time, volts and amperes, some noise in the last digits. */
export function writeLargeCapture(path, rowCount) {
  const file = openSync(path, 'w');
  writeSync(file, 'Remark,"Invented data, to time reading with"\nTime (s),CH1 (V),CH2 (A)\n');
  let noise = 1;
  for (let from = 0; from < rowCount; from += BLOCK_ROWS) {
    let block = '';
    for (let i = from; i < Math.min(rowCount, from + BLOCK_ROWS); i++) {
      noise = (Math.imul(noise, 1664525) + 1013904223) | 0;
      const angle = 2 * Math.PI * 50 * i * INTERVAL_S;
      const spread = noise / 2 ** 31;
      const volts = 325 * Math.sin(angle) + 2 * spread;
      const amperes = 3 * Math.sin(angle - 0.3) + 0.02 * spread;
      block += `${(i * INTERVAL_S - 1).toFixed(9)},${volts.toFixed(7)},${amperes.toFixed(9)}\n`;
    }
    writeSync(file, block);
  }
  closeSync(file);
}
