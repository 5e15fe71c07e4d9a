import { significantText, withUnit } from '../../words/numbers.ts';
import { figureText, secondsFigureText, secondsText } from '../../words/quantities.ts';
import type { PicturedEvent, PicturedStep, StepPicture, StepSubject } from './stepPicture.ts';

type FigureRow = readonly [name: string, value: string];

/** The figures of the change that a sheet is about, a row each; empty where nothing changes. */
export function stepFigureRows(subject: StepSubject, picture: StepPicture): readonly FigureRow[] {
  if (subject === null) return [];
  return subject.kind === 'step'
    ? ofStep(subject.step, picture)
    : [...ofEvent(subject.event), ...loadRows(subject.event)];
}

/** Under which load it happened, and for how long that was held before, as far as either is known. */
function loadRows(event: PicturedEvent): readonly FigureRow[] {
  if ('extreme' in event) return [];
  const { loadW, heldS, heldAtLeast = false, isAfterLess = false } = event;
  const isOff = isAfterLess && (loadW ?? 0) === 0;
  return [
    ...(loadW === undefined
      ? []
      : [['Load', loadW === 0 ? 'none' : withUnit(significantText(loadW, 3), 'W')] as const]),
    // How long the record shows of a load that nobody knows tells nothing.
    ...(heldS === undefined || (heldAtLeast && loadW === undefined)
      ? []
      : [
          [
            isOff ? 'After the load went off' : heldAtLeast ? 'Load held for at least' : 'Load held for',
            secondsFigureText(heldS),
          ] as const,
        ]),
  ];
}

function ofStep(step: PicturedStep, { distortion }: StepPicture): readonly FigureRow[] {
  const recovery = step.recovery.map(
    ({ bandPercent, s }): FigureRow => [`Within ±${bandPercent} % after`, secondsFigureText(s)],
  );
  return [
    ['When', figureText(step.atS, 's')],
    ['Before', figureText(step.before, 'V')],
    ['Farthest', figureText(step.extreme, 'V')],
    ['After', figureText(step.after, 'V')],
    ['Deviation, of nominal', figureText(step.deviationPercent, '%')],
    ['After, of nominal', figureText(step.afterPercent, '%')],
    ...recovery,
    ['Overshoot on the way back', figureText(step.overshootPercent, '%')],
    ['Frequency before', figureText(step.beforeHz, 'Hz')],
    ['Frequency farthest', figureText(step.extremeHz, 'Hz')],
    ['Frequency after', figureText(step.afterHz, 'Hz')],
    ...(distortion === null
      ? []
      : ([
          ['THD before', figureText(distortion.beforePercent, '%')],
          ['THD after', figureText(distortion.afterPercent, '%')],
        ] satisfies FigureRow[])),
  ];
}

function ofEvent(event: PicturedEvent): readonly FigureRow[] {
  switch (event.kind) {
    case 'transfer':
    case 'outage':
      return [
        ['Voltage goes at', figureText(event.startS, 's')],
        ['Voltage is back at', figureText(event.endS, 's')],
        ['Without voltage for', secondsFigureText(event.durationS)],
        ['Phase jump', figureText(event.phaseJumpDeg, '°')],
        ['Largest voltage meanwhile', figureText(event.residual, 'V')],
        ['Highest peak on return', figureText(event.returnPeak, 'V')],
      ];
    case 'start-up':
      return [
        ['Voltage starts at', figureText(event.startS, 's')],
        ['First peak', figureText(event.returnPeak, 'V')],
      ];
    case 'cut-off':
      return [['Voltage goes at', figureText(event.startS, 's')]];
    case 'idle bursts':
      return [
        ['Bursts', String(event.bursts)],
        ['Each', secondsFigureText(event.burstS)],
        ['One every', secondsFigureText(event.intervalS)],
      ];
    case 'brown-out':
      return [
        ['Voltage falls at', figureText(event.startS, 's')],
        [event.endS.value === null ? 'Low for at least' : 'Low for', secondsFigureText(event.durationS)],
        ['Before', figureText(event.before, 'V')],
        ['Lowest', figureText(event.lowest, 'V')],
      ];
    case 'hiccup':
      return [
        ['First lost at', figureText(event.startS, 's')],
        ['Lost', `${event.count} times`],
        ['From one loss to the next', secondsFigureText(event.periodS)],
        ['On each time for', secondsFigureText(event.onS)],
      ];
    case 'failed start':
      return [
        ['Voltage starts at', figureText(event.startS, 's')],
        ['Gone again at', figureText(event.endS, 's')],
        ['Highest peak meanwhile', figureText(event.returnPeak, 'V')],
      ];
    case 'inrush':
      return [
        ['Peak at', figureText(event.atS, 's')],
        [event.clipped ? 'Peak current, at least' : 'Peak current', figureText(event.peakA, 'A')],
      ];
    default:
      return [
        ['Starts at', secondsText(event.startS)],
        ['Lasts', secondsText(event.durationS)],
        ['Farthest', withUnit(significantText(event.extreme, 4), 'V')],
      ];
  }
}
