import { drawPicture, sealedSheet } from '../../entry/drawing.ts';
import type { Evidence } from '../../entry/evidence.ts';
import { html, type Markup } from '../../entry/sections.ts';
import { savePicture, saveText } from '../save/saveResult.ts';
import { pagePress } from '../shipped.ts';
import type { DrawingTurns } from './severalView.ts';

interface SavedSheet {
  /** @param name - what it is saved as, without the ending. */
  readonly show: (evidence: Evidence, name: string) => void;
  readonly clear: () => void;
}

/** Buttons that save a sheet, for the part that `savedSheet` is given. */
export const saveButtons: Markup = html`<div class="actions">
<button type="button" data-sheet="svg">Save sheet (SVG)</button>
<button type="button" data-sheet="png">Sheet as picture (PNG)</button>
</div>
`;

/**
 * A sheet that is shown and can be saved.
 *
 * @param part - holds `saveButtons` and a place of the class `sheet`.
 * @param tried - does something that may fail, and says what came of it.
 */
export function savedSheet(
  part: HTMLElement,
  turns: DrawingTurns,
  tried: (work: () => Promise<string> | string) => Promise<void>,
): SavedSheet {
  const { ownerDocument } = part;
  const inline = inlineSheet(part.querySelector('.sheet')!, turns);
  let shown: { readonly evidence: Evidence; readonly name: string } | null = null;
  part.addEventListener('click', ({ target }) => {
    const what = (target as HTMLElement).closest('button')?.dataset.sheet;
    if (what === undefined || shown === null) return;
    const { evidence, name } = shown;
    void tried(() => {
      if (what === 'png') return savePicture(ownerDocument, `${name}.png`, evidence);
      const svg = sealedSheet(pagePress(ownerDocument), evidence);
      saveText(ownerDocument, `${name}.svg`, svg, 'image/svg+xml');
      return `Saved ${name}.svg.`;
    });
  });
  return {
    show: (evidence, name) => {
      shown = { evidence, name };
      inline.show(evidence);
    },
    clear: () => {
      shown = null;
      inline.show(null);
    },
  };
}

/** A sheet as part of the page. */
interface InlineSheet {
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
