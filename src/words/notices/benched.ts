import type { BenchNotices, CompareNotices } from '../../bench/notices.ts';
import type { SentencesOf } from './sentences.ts';

const tellers = { told: 'as told', 'file name': "as the files' names tell them" } as const;

/** What to doubt of a bench test as a whole. */
export const benched: SentencesOf<BenchNotices> = {
  'bench.belowRating': ({ highestW, ratedW }) =>
    `The highest load, ${Math.round(highestW)} W, is below the ${ratedW} W it is rated at: full load here is no full load.`,
  'bench.loadKind': ({ file, kind }) =>
    `${file} has ${/^[aeiou]/.test(kind) ? 'an' : 'a'} ${kind} load: it is left out of the line for the output impedance.`,
  'bench.loadTold': ({ by, isMeasured }) =>
    `Loads are ${by.map((from) => tellers[from]).join(' or ')}${isMeasured ? ' where no current was captured' : ''}: a heater takes less than its plate says where the voltage sags.`,
  'bench.loadUnknown': ({ captures }) =>
    `${captures === 1 ? 'One capture has' : `${captures} captures have`} no known load and no place in the sweep: give a load in W, or record the current.`,
  'bench.noStep': ({ file }) => `No load step was found in ${file}.`,
  'bench.noTransfer': ({ file }) => `No transfer was found in ${file}.`,
  'bench.scaleDiffers': ({ file, rmsV }) =>
    `${file} shows ${rmsV.toFixed(1)} V, far from the others: give its scale, the ratio of the probe.`,
};

/** What makes two captures hard to compare. */
export const compared: SentencesOf<CompareNotices> = {
  'compare.budgets':
    'One instrument was told, but sheets and results don’t carry what their uncertainties are made of: name the captures themselves. The differences are taken as of two instruments.',
  'compare.load': ({ a, b }) =>
    a === undefined || b === undefined
      ? 'The load of one or both is not told: a difference may be the load’s.'
      : `They were taken at different loads, ${a} and ${b}.`,
  'compare.nominal': 'They are not of the same nominal voltage and frequency.',
  'compare.orders': ({ a, b }, option) =>
    `Their THD counts harmonics to different orders, ${a} and ${b}: compare it with care, or set ${option('orders')}.`,
  'compare.rate':
    'Their sample rates are more than a factor of two apart: noise, edges and THD plus noise are seen differently.',
  'compare.same': 'Both are the same capture: their SHA-256 are equal.',
};
