import { rounded } from '../../base/amountText.ts';
import type { JudgeNotices, MeterFacts } from '../../judge/notices.ts';
import type { SentencesOf } from './sentences.ts';

type Taken = Readonly<JudgeNotices['nominal.off']>;
type Outlet = Taken['nominal'];

const outletWords = ({ voltageV, frequencyHz }: Outlet): string => `${voltageV} V ${frequencyHz} Hz`;
const either = (outlets: readonly Outlet[]): string => outlets.map(outletWords).join(' or ');

function taken({ nominal, rmsV, off }: Taken): string {
  const lies =
    off === null
      ? ''
      : `, for which ${rounded(rmsV, 3)} V is ${Math.round(Math.abs(off) * 100)} % ${off < 0 ? 'low' : 'high'}`;
  return `Taken for ${outletWords(nominal)}${lies}`;
}

/** What to doubt of the outlet that a voltage is taken for, and of its scale. */
export const judged: SentencesOf<JudgeNotices> = {
  'dc.large': ({ meanV, acRmsV }) =>
    `The wave rides on ${rounded(meanV, 3)} V of DC, where an outlet has next to none. If the file counts codes from zero or the trace was moved, the voltage is the RMS without DC: ${rounded(acRmsV, 3)} V.`,
  'frequency.suspect': ({ frequencyHz, expectedHz }, option) =>
    `${rounded(frequencyHz, 3)} Hz is far from ${expectedHz ?? '50 or 60'} Hz: the file's time axis looks wrong, unless the outlet really runs so. It is measured as the file says; if the frequency is real, tell it with ${option('nominal')}.`,
  'nominal.none': ({ others }, option) => {
    const tell = `ell it with ${option('nominal')}.`;
    return `No usual outlet voltage fits this wave, so limits that need one are left out. ${others.length === 0 ? `T${tell}` : `If the outlet is meant for ${either(others)}, t${tell}`}`;
  },
  'nominal.off': (facts, option) =>
    `${taken(facts)}: if the outlet is meant for another voltage, tell it with ${option('nominal')}.`,
  'nominal.other': (facts, option) =>
    `${taken(facts)}; ${either(facts.others)} is possible too. Tell which with ${option('nominal')}.`,
  'scale.half': ({ rmsV, wholeV }) =>
    `${rounded(rmsV, 3)} V is about half of ${wholeV} V: one leg of a floating outlet? Measure between its two live contacts with a differential probe.`,
  'scale.suspect': ({ rmsV, proposals }, option) => {
    const scale = option('scales');
    const ways = proposals.map(({ ratio, landsOnV }) => `${scale} ${ratio} would land near ${landsOnV} V`);
    return `The scale looks wrong: ${rounded(rmsV, 3)} V is no outlet voltage${ways.length === 0 ? '' : `, but ${ways.join(', ')}`}. Check the probe's ratio (${scale} comes on top of any scale already set).`;
  },
};

/** What a meter's reading and the file say of each other. */
export const metered: SentencesOf<MeterFacts> = {
  'meter.average': ({ readingV, fileV, averageV, kind }) =>
    `The meter is probably not true-RMS: it shows ${rounded(readingV, 4)} V, and on this ${kind === 'not classified' ? 'wave' : kind} one that is not would show about ${rounded(averageV, 4)} V; the true RMS in the file is ${rounded(fileV, 4)} V. Nothing was changed.`,
  'meter.calibrated': ({ factor, isCredible }, option) => {
    const shown = rounded(factor, 4);
    const use = `The gain was tied to the meter: factor ${shown}. For other captures with the same probe and settings: ${option('scales')} ${shown} (times any scale already set).`;
    return isCredible
      ? use
      : `${use} That is far from 1: check the probe's ratio, the meter's range, and that both looked at the same outlet at the same time.`;
  },
  'meter.scale': ({ readingV, fileV, ratio }, option) =>
    `The probe's ratio is probably missing: the meter shows ${rounded(readingV, 4)} V, the file ${rounded(fileV, 4)} V, about ${ratio} times less. Set ${option('scales')} ${ratio} (times any scale already set) and give the reading again. Nothing was changed.`,
};
