import { amountText, rounded } from '../../base/amountText.ts';
import type { DigitiserNotices, MeasureNotices } from '../../measure/notices.ts';
import type { SentencesOf } from './sentences.ts';

/** What to set on the scope to use more of its digitiser. */
const ofDigitiser: SentencesOf<DigitiserNotices> = {
  'digitiser.clipped': ({ ends, perDivision, unit }) => {
    const codes = { top: 'highest code', bottom: 'lowest code', both: 'highest and the lowest code' }[ends];
    return perDivision === null
      ? `Samples pile up on the ${codes} that the record holds: if the trace touches the edge of the screen, set more ${unit === 'V' ? 'volts' : 'amperes'} per division and save again.`
      : `Samples pile up on the ${codes} of the scope, which cuts the wave off: set ${perDivision} ${unit} per division and save again.`;
  },
  'digitiser.missingCodes': ({ missing, levels, isOfFile }) => {
    if (isOfFile)
      return `${missing} of the ${levels} levels that the wave passes never occur: the scope's step is coarser than the file makes it look.`;
    const [some, them, occur] =
      missing === 1 ? ['One level', 'it', 'occurs'] : [`${missing} levels`, 'them', 'occur'];
    return `${some} of the scope's converter never ${occur} though the wave passes ${them}: differences of a step or two are not to be trusted.`;
  },
  'digitiser.noise': ({ noiseBits, bits }) =>
    `Noise leaves ${noiseBits.toFixed(1)} of the scope's ${bits} bits on this wave: check the probe's range and leads, or average neighbouring samples (high resolution) where ripple doesn't matter.`,
  'digitiser.range': ({
    levelsUsed,
    levelsAvailable,
    perDivision,
    unit,
    fillPercent,
    bitsAssumed,
    divisions,
  }) =>
    `The wave uses ${levelsUsed} of the scope's ${levelsAvailable} levels: set ${perDivision} ${unit} per division, where it fills ${Math.round(fillPercent)} % of the screen (${bitsAssumed ? '8 bits and ' : ''}${divisions} divisions assumed).`,
};

const effects: Readonly<Record<MeasureNotices['acquisition.mode']['acquisition'], string>> = {
  'peak detect': 'keeps the highest and lowest of each interval, which makes ripple and noise look larger',
  envelope: 'keeps the extremes of many sweeps, which makes ripple and noise look larger',
  average: 'is the mean of many sweeps, in which ripple that runs free of the wave vanishes',
  'high resolution': 'averages neighbouring samples, which makes fast ripple look smaller',
};

const turnRound = (invert: string): string =>
  `Turn the clamp round, or turn its channel upside down (${invert} NAME).`;

/** What to doubt of a measured wave, and what to do about it. */
export const measured: SentencesOf<MeasureNotices> = {
  ...ofDigitiser,
  'acquisition.mode': ({ acquisition }) =>
    `The scope's acquisition mode (${acquisition}) ${effects[acquisition]}: set it to plain sampling and save again to judge ripple.`,
  'acquisition.pairs':
    "Each two neighbouring values are the highest and the lowest of an interval, as a scope's peak detection saves them: noise, peaks and distortion look larger than they are. Set plain sampling and save again.",
  'coupling.ac':
    'The channel was AC-coupled, so DC is not measurable. Set it to DC and save again if DC matters.',
  'cycles.few': ({ cycles, isPart }) =>
    isPart
      ? `Only ${cycles.toFixed(1)} cycles of the record are steady: the figures rest on little.`
      : `Only ${cycles.toFixed(1)} cycles: set a slower time base, so that the screen holds three or more.`,
  'efficiency.impossible': ({ percent }, option) =>
    `More power comes out than goes in (${rounded(percent, 4)} %): a scale is wrong, or the two were not taken at the same time. Check probe and clamp ratios (${option('scales')} NAME=FACTOR).`,
  'frequency.unsteady': ({ doubtHz, line, sampleRateHz }) => {
    const beside =
      line === null
        ? 'a frequency of its own among the harmonics'
        : `a line beside the fundamental (some ${rounded(line.apartHz, 2)} Hz away, ${rounded(100 * line.ratio, 2)} % of it)`;
    const rateKHz = Number(rounded(sampleRateHz / 1000, 3));
    return `The frequency may be off by ${rounded(doubtHz, 2)} Hz, by more than noise explains: ${beside}, a ripple faster than ${rounded(rateKHz / 2, 3)} kHz folded down, or a wave that changes looks like this. Save again at a higher sample rate, over ten cycles or more.`;
  },
  'groups.frequency': ({ frequencyHz, cycles }) =>
    `No standard says how long a window to take at ${rounded(frequencyHz, 4)} Hz: harmonic groups were taken over ${cycles} cycles.`,
  'groups.unsynchronised': ({ movesPercent }) =>
    `The frequency moves by ${rounded(movesPercent, 2)} % within the record, so harmonic groups hold a little of their neighbours: trust the harmonics of a steadier stretch.`,
  'kind.fewCodes': ({ values }) =>
    `The record has only ${values} different values and fits a sine rounded to them: a staircase of as many steps would look the same, so its kind is not certain. Save with all digits too.`,
  'power.negative': ({ activeW }, option) =>
    activeW === null
      ? `Power at the DC input comes out negative: the probe or the clamp is the wrong way round, or the battery is being charged. ${turnRound(option('inverted'))}`
      : `Power comes out negative, ${rounded(activeW, 3)} W: the voltage probe or the clamp is the wrong way round. ${turnRound(option('inverted'))}`,
  'power.skew': ({ doubtS, doubtW }, option) =>
    `Clamp and probe may be ${rounded(doubtS * 1e6, 2)} µs apart in time, which is ${rounded(doubtW, 2)} W on this load. Measure a heater on the same probe and clamp first: the displacement that it shows, over 360° and the frequency, is the delay to give with ${option('skews')}.`,
  'rate.low': ({ reached, asked, neededHz }) =>
    `The sample rate reaches harmonic ${reached}, not ${asked}: use ${amountText(neededHz, 'S/s', 2)} or more.`,
  'rate.steps': ({ samplesPerCycle, neededHz }) =>
    `With ${Math.round(samplesPerCycle)} samples a cycle a wave of many fine steps can pass for a smooth one: use ${amountText(neededHz, 'S/s', 2)} or more.`,
  'resolution.coarse': ({ levels }) =>
    `The wave spans only ${levels} levels of the scope: set fewer volts per division, so that it fills the screen.`,
  'ripple.alias': ({ rippleHz, sampleRateHz, neededHz, isNearHalf }) => {
    const needed = `${amountText(neededHz, 'S/s')} or more`;
    return isNearHalf
      ? `The ripple at ${amountText(rippleHz, 'Hz')} lies close to half the sample rate, ${amountText(sampleRateHz / 2, 'Hz')}: it may be a faster one folded down, and its size can't be trusted. Save again at ${needed}.`
      : `At ${amountText(sampleRateHz, 'S/s')} a ripple at ${amountText(rippleHz, 'Hz')} may be one at ${amountText(sampleRateHz - rippleHz, 'Hz')} or ${amountText(sampleRateHz + rippleHz, 'Hz')} folded down. Save again at ${needed}: if it stays where it is, it is real.`;
  },
  'span.longest': ({ fromS, toS }) =>
    `A gap of over half a cycle splits the record: its longest part is measured, ${rounded(fromS, 5)} s to ${rounded(toS, 5)} s.`,
  'value.outlier': ({ value, atS, more, leftOutOf }) => {
    const at = `${rounded(atS, 6)} s`;
    if (leftOutOf === undefined) {
      const others = more === 0 ? '' : `, and ${more} more`;
      return `A single value of ${rounded(value, 4)} at ${at} stands far off the wave${others}: if the file is damaged there, save it again; extremes and noise hold it.`;
    }
    // A channel may have no unit.
    const amount = `${rounded(value, 4)} ${leftOutOf.unit}`.trimEnd();
    const [others, are] = more === 0 ? ['', 'is'] : [`, and ${more} more like it,`, 'are'];
    return `${leftOutOf.name}: a single value of ${amount} at ${at}${others} ${are} far beyond all others and left out: look whether the file is damaged there.`;
  },
  'wave.clipped': ({ ends }) => {
    const where = { top: 'The top is', bottom: 'The bottom is', both: 'Top and bottom are' }[ends];
    return `${where} cut dead flat: if the trace touches the edge of the screen, set more volts per division and save again.`;
  },
  'wave.drifts': ({ percent }) =>
    `The wave changes by ${percent.toFixed(1)} % over the record: the figures are its average.`,
};
