import { rounded } from '../../base/amountText.ts';
import type { EnergyNotices } from '../../energy/notices.ts';
import { counted } from '../errors/wording.ts';
import type { SentencesOf } from './sentences.ts';

/** What to doubt of what was found in an energy log, and what to do about it. */
export const energyFound: SentencesOf<EnergyNotices> = {
  'counter.differs': ({ name, ratioPercent }) =>
    `The log's own counter (${name}) comes to ${rounded(ratioPercent, 4)} % of what its rows add up to: one of the two is wrong.`,
  'counter.fixedStep': ({ name, ratioPercent, seconds }) =>
    `The log's own counter (${name}) is wrong: it takes each row for ${rounded(seconds, 3)} s, whatever the clock says, and comes to ${rounded(ratioPercent, 4)} % of what its rows add up to.`,
  'cycling.coarse': ({ rowsPerCycle }) =>
    `The load comes and goes with ${rounded(rowsPerCycle, 2)} rows a cycle: rows may beat with it, so that its energy can be far off. Log more often, or take a meter's counter.`,
  'direction.assumed': 'Nothing in the log says which way it flows: it is taken for a discharge.',
  'efficiency.tooHigh': ({ percent }) =>
    `More comes out than goes in (${rounded(percent, 4)} %): a meter is wrong, or the two logs are not of the same discharge.`,
  'holes.counted': ({ holes, hours }) =>
    `${counted(holes, 'hole')} in the record (${hoursText(hours)} in all) under load on both sides: counted by the load at its ends, with that much doubt.`,
  'holes.left': ({ holes, hours }) =>
    `${counted(holes, 'hole')} in the record (${hoursText(hours)} in all): what flowed there is not known and not counted.`,
  'logMeter.assumed': ({ measured, isAc, clockPpm }) => {
    const accuracies = {
      watts: `watts to ${isAc ? '2 %' : '1.5 %'} and two steps`,
      'volts and amperes': 'volts to 0.5 % and a step, amperes to 1 % and two steps',
      amperes: 'amperes to 1 % and two steps',
    };
    return `How good the meter is was not told: assumed ${accuracies[measured]}, its clock to ${clockPpm >= 1000 ? `${rounded(clockPpm / 1e4, 2)} %` : `${clockPpm} ppm`} (common practice; tell it with --instrument).`;
  },
  'run.open': ({ kind }) =>
    `The log ends while the ${kind} goes on: if it was stopped before the ${kind === 'charge' ? 'charge was over' : 'unit switched off'}, energy and time are least values.`,
  'runs.several': ({ discharges, largestWh, togetherWh }) =>
    `The log holds ${discharges} discharges, ${rounded(togetherWh, 4)} Wh together: shares and claims are of the largest, ${rounded(largestWh, 4)} Wh.`,
  'side.unknown':
    'Which side of the inverter the log is from is not known: say it with --side ac or --side dc.',
  'total.differs': ({ place, unit, value, ratioPercent }) =>
    `The total in the log's ${place}, ${rounded(value, 5)} ${unit}, is ${rounded(ratioPercent, 4)} % of what its rows add up to: one of the two is wrong.`,
};

function hoursText(hours: number): string {
  return hours < 1 ? `${rounded(60 * hours, 3)} min` : `${rounded(hours, 3)} h`;
}
