import type { Command } from 'commander';
import { type AssayOptions, completeOptions, failureLine, MeasureError } from '../entry/measuring.ts';
import { exitCodes } from './exitCodes.ts';
import { failedResult, type MeasureFileOptions } from './measureFile.ts';
import type { MeasureFlags } from './measureOptions.ts';
import { readText } from './reading/readText.ts';
import { unreadable } from './unreadable.ts';

/**
 * The flags in the terms of the core.
 *
 * @throws CommanderError where the instrument file can't be read.
 */
export async function measureFileOptions(flags: MeasureFlags, command: Command): Promise<MeasureFileOptions> {
  return completeOptions({
    claims: flags.claim,
    scales: flags.scale,
    inverted: flags.invert,
    rule: flags.rule,
    orders: flags.orders,
    sineThdPercent: flags.sineThd,
    perWindow: flags.windows,
    label: flags.label,
    load: flags.load,
    nominal: flags.nominal,
    voltage: flags.voltage,
    current: flags.current,
    directInput: flags.dcInput,
    skews: flags.skew,
    instrument: flags.instrument === undefined ? undefined : await instrumentIn(flags.instrument, command),
    sampleRateHz: flags.sampleRate,
    meter:
      flags.meter === undefined ? undefined : { readingV: flags.meter, dcCoupled: flags.meterDc ?? false },
  });
}

/** An instrument file is one of the words: where it is wrong, nothing is measured. */
async function instrumentIn(
  file: string,
  command: Command,
): Promise<NonNullable<AssayOptions['instrument']>> {
  // It alone needs YAML, which takes longer to load than a small capture to measure.
  const { readInstrument } = await import('../entry/plans.ts');
  try {
    return readInstrument(await readText(file));
  } catch (error) {
    const known = error instanceof MeasureError ? error : unreadable(error);
    return command.error(
      `error: option '--instrument <file>' argument '${file}' is invalid. ${failureLine(failedResult(file, known))}`,
      { exitCode: exitCodes.usage },
    );
  }
}
