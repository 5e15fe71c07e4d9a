import { MeasureError } from '../../base/measureError.ts';

/** The error for a claim that can't be understood: what was looked for, and how claims are written. */
export function claimGrammarError(text: string, expected: string): MeasureError {
  return new MeasureError('claim.grammar', `The claim "${text}" can't be understood.`, {
    expected,
    received: text,
    advice:
      'Write for example: pure sine; 120 V ±5 %; 230 V +6/-10 %; 110..127 V; 60 Hz ±0.5 Hz; THD < 3 %; crest 1.38..1.45; transfer < 20 ms. +- stands for ±.',
  });
}

/** The error for a claim about the unit as a whole, which no single capture can judge. */
export function unitClaimError(text: string): MeasureError {
  return new MeasureError('claim.grammar', `The claim "${text}" is one about a unit over several captures.`, {
    expected: 'a claim that one capture can show: a wave, V, Hz, THD, crest or transfer',
    received: text,
    advice: `Take it to bench, which judges it over loads, steps and discharges: sineassay bench 0W=idle.csv 300W=heater.csv --claim "${text.replaceAll('"', '')}"`,
  });
}
