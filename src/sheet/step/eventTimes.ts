import type { PicturedEvent } from './stepPicture.ts';

/** When an event starts and ends, in seconds on the file's axis; the end null where it has none of its own. */
export function eventTimes(event: PicturedEvent): { readonly startS: number; readonly endS: number | null } {
  switch (event.kind) {
    case 'transfer':
    case 'outage':
    case 'failed start':
      return { startS: event.startS.value, endS: event.endS.value };
    case 'brown-out':
      return { startS: event.startS.value, endS: event.startS.value + event.durationS.value };
    case 'hiccup':
      return { startS: event.startS.value, endS: null };
    case 'inrush':
      return { startS: event.atS.value, endS: null };
    case 'start-up':
    case 'cut-off':
    case 'idle bursts':
      return { startS: event.startS.value, endS: null };
    default:
      return { startS: event.startS, endS: event.endS };
  }
}
