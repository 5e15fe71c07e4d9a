import { claimedNominal } from '../judge/claims/judgeClaim.ts';
import { judgeChannel } from '../judge/judgeChannel.ts';
import { SINE_THD_PERCENT } from '../judge/waveform/classifyWave.ts';
import { ASSUMED_INSTRUMENT } from '../measure/doubt/instrument.ts';
import { measureChannel } from '../measure/measureChannel.ts';
import { SEARCHED_LOAD_W } from '../measure/steps/supplyTimeline.ts';
import type { Capture, Channel } from '../read/capture.ts';
import type { Assay } from './assay.ts';
import type { AssayOptions, CaptureSource } from './assayOptions.ts';
import { channelAssay } from './channelAssay.ts';
import { currentOf, skewOf } from './currentAndPower.ts';
import { loadInWords } from './loadSeen.ts';
import type { AssayNotice } from './notices.ts';

/**
 * One channel's result: what belongs to it is chosen, all of it is measured, then judged, then put together.
 *
 * @param given - notices of the capture and of the choice of the channel.
 * @throws MeasureError where the wave can't be measured, or a channel named isn't there.
 */
export function assayChannel(
  capture: Capture,
  channel: Channel,
  source: CaptureSource,
  given: readonly AssayNotice[],
  options: AssayOptions,
): Assay {
  const { claims = [], rule = 'guarded', sineThdPercent = SINE_THD_PERCENT, orders = 50 } = options;
  const { nominal, meter, skews = [] } = options;
  const isVoltage = channel.quantity === 'voltage';
  const { channel: current, notices } = isVoltage
    ? currentOf(capture, channel, options)
    : { channel: null, notices: [] };
  const toldW = loadInWords({ told: options.load, file: source.file })?.watts ?? null;
  const toldHz = { ...claimedNominal(claims), ...nominal }.frequencyHz;

  const measured = measureChannel(capture, channel, {
    ...{ orders, current },
    instrument: { ...ASSUMED_INSTRUMENT, ...options.instrument },
    ...(meter === undefined ? {} : { meter }),
    skewS: current === null ? undefined : skewOf(channel.name, current.name, skews),
    nominalFrequencyHz: isVoltage && toldHz !== undefined ? toldHz : null,
    isLoaded: toldW !== null && toldW > SEARCHED_LOAD_W,
  });
  const judged = judgeChannel(measured, { claims, nominal, rule, sineThdPercent });
  return channelAssay(measured, judged, {
    ...{ source, options, toldW, rule, sineThdPercent, orders, current },
    notices: { given, ofCurrent: notices },
  });
}
