import { fields, flagName, flags } from '../assay/options/optionLists.ts';
import type { OptionKey } from '../assay/options/options.ts';
import type { LogOptionKey } from '../energy/log/logErrors.ts';

/** How a door calls an option, for a sentence that asks for it. */
export type OptionName = (option: OptionKey | LogOptionKey) => string;

/** What a log's reading may ask for, which no capture needs. */
const logFlags: Readonly<Record<LogOptionKey, string>> = {
  power: '--power',
  volts: '--volts',
  amps: '--amps',
  counter: '--counter',
  side: '--side',
  timeOrder: '--time-order',
};

/** As a terminal and a document call it: `--scale`. */
export const flagOf: OptionName = (option) =>
  option in logFlags
    ? logFlags[option as LogOptionKey]
    : flagName(flags.find((flag) => flag.option === option)!);

/** As the page calls it: “Probe or divider ratio”. */
export const fieldOf: OptionName = (option) => {
  const field = fields.find((one) => one.option === option);
  return field === undefined ? `${flagOf(option)} of the command line` : `“${field.label}”`;
};
