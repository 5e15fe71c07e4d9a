import { drawPicture } from '../../entry/drawing.ts';
import type { Evidence } from '../../entry/evidence.ts';
import { pagePress } from '../save/press.ts';
import type { DrawingTurns } from './drawingTurns.ts';

/** A sheet as part of the page. */
export interface InlineSheet {
  /** Null: none, and no place for one. */
  readonly show: (evidence: Evidence | null) => void;
}

/**
 * A place for a sheet: drawn when its turn comes, and only where it can be seen. Where the sheet is wider than its
 * place it moves sideways, by finger or by keys.
 *
 * @param host - is filled; with a label that names the sheet. Within `details` it is drawn while they are open.
 */
export function inlineSheet(host: HTMLElement, turns: DrawingTurns): InlineSheet {
  // The page has the typeface already, and its policy forbids a style of the picture's own.
  const press = { ...pagePress(host.ownerDocument), typeface: [] };
  const folded = host.closest('details');
  let wanted: Evidence | null = null;
  let isDrawn = false;
  const letFocus = (): void => {
    host.tabIndex = host.scrollWidth > host.clientWidth ? 0 : -1;
  };
  const draw = (): void => {
    const evidence = wanted;
    if (evidence === null || isDrawn || folded?.open === false) return;
    turns.draw(host, () => {
      host.innerHTML = drawPicture(press, evidence);
      isDrawn = true;
      letFocus();
    });
  };
  new ResizeObserver(letFocus).observe(host);
  folded?.addEventListener('toggle', draw);
  return {
    show: (evidence) => {
      if (evidence === wanted) return;
      wanted = evidence;
      host.hidden = evidence === null;
      // Its turn may be long in coming: until then no picture is better than another's.
      turns.drop(host);
      host.replaceChildren();
      isDrawn = false;
      draw();
    },
  };
}
