import type { Face, Press } from '../../draw/seal.ts';
import { caution, cleanText, noCertificate } from '../../words/text.ts';
import { html, Markup } from './html.ts';
import { pageStyle } from './pageStyle.ts';

/** What it takes to make a page, handed in. */
export type PagePress = Pick<Press, 'sha256' | 'typeface'>;

interface HtmlPageOptions {
  readonly title: string;
  /** For search engines and previews: the answer. */
  readonly description: string;
  /** Version of the program. */
  readonly program: string;
  readonly main: Markup;
  /** Takes the document and arranges what is there; the page reads without it. */
  readonly script: (document: Document) => void;
}

/**
 * A page as the text of one HTML file that needs no other and reaches nothing: its content policy allows its own
 * style, script and typeface, by digest, and forbids all else.
 *
 * @returns the same text for the same page.
 */
export function htmlPage({ sha256, typeface }: PagePress, options: HtmlPageOptions): string {
  const style = `${fontRules(options.main.text, typeface)}\n${pageStyle}`;
  const script = `(${options.script.toString()})(document);`;
  const policy = [
    "default-src 'none'",
    `script-src '${source(sha256(script))}'`,
    `style-src '${source(sha256(style))}'`,
    'font-src data:',
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ');
  return html`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="referrer" content="no-referrer">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<meta name="generator" content="${`sineassay ${cleanText(options.program)}`}">
<meta name="description" content="${options.description}">
<title>${options.title}</title>
<style>${new Markup(style)}</style>
</head>
<body>
${options.main}
<footer>
<p>${caution}</p>
<p><strong>${noCertificate}</strong> Made with sineassay ${cleanText(options.program)}.</p>
</footer>
<script>${new Markup(script)}</script>
</body>
</html>
`.text;
}

/** The faces that hold a letter of the text, in either weight. */
function fontRules(text: string, faces: readonly Face[]): string {
  const points = [...new Set(text)].map((character) => character.codePointAt(0) ?? 0);
  return faces
    .filter(({ covers }) => points.some((point) => covers.some(([from, to]) => from <= point && point <= to)))
    .map(({ rule }) => rule)
    .join('\n');
}

/** A digest as a content policy names it: base64 of its bytes. */
function source(sha256: string): string {
  const bytes = sha256.match(/../g)!.map((pair) => Number.parseInt(pair, 16));
  return `sha256-${btoa(String.fromCharCode(...bytes))}`;
}
