import { ASSUMED_INSTRUMENT, type Instrument } from '../measure/doubt/instrument.ts';
import type { MeasuredWave } from '../measure/measuredWave.ts';
import { conversionEfficiency } from '../measure/power/conversionEfficiency.ts';
import { type DirectPowerFigures, measureDirectPower } from '../measure/power/measureDirectPower.ts';
import { waveInput } from '../measure/steadyWave.ts';
import type { Capture, Channel } from '../read/capture.ts';
import { asCurrent } from '../read/joinCurrent.ts';
import { channelNamed } from '../read/selectChannel.ts';
import { withoutBudget } from './channelFigures.ts';
import type { InputDocument, PowerDocument } from './measureDocument.ts';
import type { AssayNotice } from './notices.ts';

/** Names of the channels at a unit's DC input. */
export interface DirectInputChannels {
  readonly voltage: string;
  readonly current: string;
}

/**
 * The DC power that a unit takes in, with its ripple, and the conversion efficiency where the AC power is known.
 *
 * @param isScaled - true for a channel whose scale the person gave.
 * @throws MeasureError `channel.unknown`, `channel.unmeasurable`, `power.noSamples`.
 */
export function directInput(
  capture: Capture,
  names: DirectInputChannels,
  wave: MeasuredWave,
  outlet: PowerDocument | undefined,
  instrument: Instrument,
  isScaled: (channel: Channel) => boolean,
): { readonly input: InputDocument; readonly notices: readonly AssayNotice[] } {
  const voltage = channelNamed(capture, names.voltage);
  const named = channelNamed(capture, names.current);
  const { channel: current, notices } = asCurrent(named, isScaled(named));
  const chain = { instrument: { ...instrument, offsetV: ASSUMED_INSTRUMENT.offsetV } };
  const power = measureDirectPower({
    voltage: waveInput(capture, voltage),
    current: waveInput(capture, current),
    // The input pulses with the outlet's wave: means over whole cycles of it.
    ...(wave.periodic === null ? {} : { periodS: wave.periodic.periodSamples * wave.intervalS }),
    voltageChain: chain,
    currentChain: chain,
  });
  const efficiency = outlet === undefined ? null : conversionEfficiency(outlet.activeW, power.activeW);
  return {
    input: {
      voltageChannel: voltage.name,
      currentChannel: current.name,
      ...bare(power),
      ...(efficiency === null
        ? {}
        : { conversionEfficiencyPercent: withoutBudget(efficiency.efficiencyPercent) }),
    },
    notices: [...notices, ...power.notices, ...(efficiency?.notices ?? [])],
  };
}

function bare(power: DirectPowerFigures): Omit<DirectPowerFigures, 'notices'> {
  const { activeW, meanV, meanA, rippleV, rippleA, rippleVoltagePercent, rippleCurrentPercent } = power;
  return {
    activeW: withoutBudget(activeW),
    meanV: withoutBudget(meanV),
    meanA: withoutBudget(meanA),
    rippleV: withoutBudget(rippleV),
    rippleA: withoutBudget(rippleA),
    rippleVoltagePercent: withoutBudget(rippleVoltagePercent),
    rippleCurrentPercent: withoutBudget(rippleCurrentPercent),
  };
}
