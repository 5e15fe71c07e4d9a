import type { EventResult } from '../../assay/stepsDocument.ts';
import type { Figure, MeasuredFigure } from '../../base/figure.ts';
import { inMilliseconds, isShort } from '../../words/quantities.ts';
import type { Story } from '../../words/story.ts';

/** A number of a card: as large as it gets, its name below. */
export interface CardFigure {
  readonly name: string;
  readonly figure: Figure;
  readonly unit: string;
}

/** The one or two numbers that a story is told by, those known; the first tells most. */
export function storyFigures(story: Story): readonly CardFigure[] {
  const told = story.kind === 'event' ? ofEvent(story.event) : ofChange(story);
  return told.filter(({ figure }) => figure.value !== null);
}

function ofChange(story: Exclude<Story, { kind: 'event' }>): readonly CardFigure[] {
  if (story.kind === 'excursion') {
    const { extremeV, durationS } = story.excursion;
    return [
      { name: 'farthest, RMS of a cycle', figure: plain(extremeV), unit: 'V' },
      time('long', plain(durationS)),
    ];
  }
  const { deviationPercent, extremeV, recoveryS } = story.step;
  return [
    deviationPercent.value === null
      ? { name: 'farthest, RMS of a cycle', figure: extremeV, unit: 'V' }
      : { name: 'of nominal, at the farthest', figure: deviationPercent, unit: '%' },
    time('until it settled', recoveryS),
  ];
}

function ofEvent(event: EventResult): readonly CardFigure[] {
  const { heldS } = event;
  const held = heldS === undefined ? [] : [time('that load was held before', heldS)];
  switch (event.kind) {
    case 'cut-off':
      return heldS === undefined
        ? [time('into the record, output lost', event.startS)]
        : [time(event.heldAtLeast === true ? 'held at least, then lost' : 'held, then lost', heldS)];
    case 'hiccup':
      return [time('from one loss to the next', event.periodS), time('on each time', event.onS)];
    case 'failed start':
      return [{ name: 'highest peak, then gone again', figure: event.returnPeakV, unit: 'V' }, ...held];
    case 'brown-out':
      return [
        { name: 'lowest, RMS of a cycle', figure: event.lowestV, unit: 'V' },
        time(event.endS.value === null ? 'low, at least' : 'low', event.durationS),
      ];
    case 'transfer':
    case 'outage':
      return [time('without voltage', event.durationS), ...held];
    case 'start-up':
      return [{ name: 'first peak', figure: event.returnPeakV, unit: 'V' }];
    case 'idle bursts':
      return [time('from one burst to the next', event.intervalS), time('each burst', event.burstS)];
    case 'inrush':
      return [
        { name: event.clipped ? 'peak current, at least' : 'peak current', figure: event.peakA, unit: 'A' },
      ];
  }
}

/** A number without an uncertainty of its own, to the digits that it is told in. */
function plain(value: number): MeasuredFigure {
  return { value: Number(value.toPrecision(3)), uncertainty: 0 };
}

function time(name: string, figure: Figure): CardFigure {
  return isShort(figure) ? { name, figure: inMilliseconds(figure), unit: 'ms' } : { name, figure, unit: 's' };
}
