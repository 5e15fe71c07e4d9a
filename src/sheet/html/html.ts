import { escaped } from '../paper/escaped.ts';

/** Text that is HTML already. Only `html` makes it, so that nothing gets onto a page that was not escaped. */
export class Markup {
  readonly text: string;
  constructor(text: string) {
    this.text = text;
  }
}

/** What may stand in a template: text and numbers are escaped, markup stands as it is, null and false are nothing. */
export type Piece = string | number | Markup | null | false | readonly Piece[];

/**
 * HTML from a template whose values are escaped, between tags and in quoted attributes alike.
 *
 * @example html`<b title="${'"'}">${'<i>'}</b>`.text // '<b title="&quot;">&lt;i&gt;</b>'
 */
export function html(literals: TemplateStringsArray, ...values: readonly Piece[]): Markup {
  return new Markup(literals.reduce((text, literal, i) => text + pieceText(values[i - 1]!) + literal));
}

function pieceText(piece: Piece): string {
  if (piece === null || piece === false) return '';
  if (piece instanceof Markup) return piece.text;
  if (typeof piece === 'string') return escaped(piece);
  return typeof piece === 'number' ? String(piece) : piece.map(pieceText).join('');
}
