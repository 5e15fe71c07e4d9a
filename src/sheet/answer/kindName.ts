import type { MeasureResult, WaveformKind } from '../../verdict/measureDocument.ts';

/**
 * What the wave is called, with what it is not: "a modified sine, not a sine"; null where it has no name.
 *
 * @param sine - what to call a pure sine.
 */
export function kindName({ kind, levels }: MeasureResult['waveform'], sine = 'a pure sine'): string | null {
  const names: Readonly<Record<WaveformKind, string | null>> = {
    'pure sine': sine,
    'distorted sine': 'a distorted sine',
    'modified sine': 'a modified sine, not a sine',
    stepped: `a stepped wave of ${levels} levels`,
    square: 'a square wave, not a sine',
    'not classified': null,
  };
  return names[kind];
}
