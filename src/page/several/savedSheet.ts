import { sealedSheet } from '../../entry/drawing.ts';
import type { Evidence } from '../../entry/evidence.ts';
import { html, type Markup } from '../../entry/sections.ts';
import { pagePress } from '../save/press.ts';
import { savePicture, saveText } from '../save/saveResult.ts';
import type { DrawingTurns } from './drawingTurns.ts';
import { inlineSheet } from './inlineSheet.ts';

export interface SavedSheet {
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
