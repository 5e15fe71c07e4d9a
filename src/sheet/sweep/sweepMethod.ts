import type { BenchUnit } from '../../bench/benchDocument.ts';
import { decimalText } from '../numbers/decimalText.ts';
import { significantText } from '../numbers/significantText.ts';

/** How the figures of a sweep come about, a sentence each. */
export function sweepMethod({ regulation, droop, points, ratedW }: BenchUnit): string[] {
  const { noLoadW, fullLoadW } = regulation;
  const watts = (loadW: number): string => `${significantText(loadW, 4)} W`;
  const { fittedLoadsW, misfit } = droop;
  const isAssumed = points.some(({ currentFrom }) => currentFrom === 'told' || currentFrom === 'file name');
  return [
    ...(noLoadW === null || fullLoadW === null
      ? []
      : [
          `Regulation: what the voltage falls by from ${watts(noLoadW)} to ${watts(fullLoadW)}, in % of the latter; an error of the scope’s gain moves both alike`,
        ]),
    ...(droop.outputImpedanceOhm.value === null
      ? []
      : [
          `Output impedance: volts lost for each ampere, by a straight line through the captures at ${fittedLoadsW.map((loadW) => significantText(loadW, 4)).join(', ')} W${misfit === null ? '' : ` (misfit ${decimalText(misfit, 1)}; about 1 is a good line)`}`,
        ]),
    ...(isAssumed ? ['The current was not measured: load over voltage, for a resistive load'] : []),
    ...(ratedW === null ? [] : [`Captures above ${watts(ratedW)} judge no claim`]),
  ];
}
