import type { InputDocument, PowerDocument } from '../../verdict/measureDocument.ts';
import type { NamedFigure } from './namedFigure.ts';

/** Every power. */
export function powerRows(power: PowerDocument): NamedFigure[] {
  return [
    ['active power', power.activeW, 'W'],
    ['apparent power', power.apparentVA, 'VA'],
    ['nonactive power', power.nonactiveVar, 'var'],
    ['power factor', power.powerFactor, ''],
    ['displacement power factor', power.displacementPowerFactor, ''],
    ['displacement angle', power.displacementDeg, '°'],
    ['fundamental apparent power', power.fundamentalApparentVA, 'VA'],
    ['fundamental active power', power.fundamentalActiveW, 'W'],
    ['fundamental reactive power', power.fundamentalReactiveVar, 'var'],
    ['nonfundamental apparent power', power.nonfundamentalApparentVA, 'VA'],
    ['current distortion power', power.currentDistortionVar, 'var'],
    ['voltage distortion power', power.voltageDistortionVar, 'var'],
    ['harmonic apparent power', power.harmonicApparentVA, 'VA'],
    ['harmonic active power', power.harmonicActiveW, 'W'],
    ['harmonic distortion power', power.harmonicDistortionVar, 'var'],
    ['harmonic pollution', power.harmonicPollutionPercent, '%'],
  ];
}

/** What a DC input takes. */
export function inputRows(input: InputDocument): NamedFigure[] {
  return [
    ['active power', input.activeW, 'W'],
    ['mean voltage', input.meanV, 'V'],
    ['mean current', input.meanA, 'A'],
    ['ripple, RMS', input.rippleV, 'V'],
    ['ripple, RMS', input.rippleA, 'A'],
    ['ripple over mean voltage', input.rippleVoltagePercent, '%'],
    ['ripple over mean current', input.rippleCurrentPercent, '%'],
    ...(input.conversionEfficiencyPercent === undefined
      ? []
      : [['conversion efficiency', input.conversionEfficiencyPercent, '%'] as NamedFigure]),
  ];
}
