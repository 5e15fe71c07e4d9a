import type { TextAccess } from './textAccess.ts';

const BLOCK_LENGTH = 4096;
const MOST_BLOCKS = 64;

/**
 * The share of control characters in a text, 0 to 1; tab, line ends and form feed are none.
 *
 * @param text - looked at in blocks spread evenly over it, since a text head may stand before a binary body.
 */
export function controlShare(text: TextAccess): number {
  const stride = Math.max(BLOCK_LENGTH, Math.ceil(text.length / MOST_BLOCKS));
  let controls = 0;
  let looked = 0;
  for (let from = 0; from < text.length; from += stride) {
    const block = text.slice(from, Math.min(text.length, from + BLOCK_LENGTH));
    for (let i = 0; i < block.length; i++) if (isControl(block.charCodeAt(i))) controls++;
    looked += block.length;
  }
  return looked === 0 ? 0 : controls / looked;
}

function isControl(code: number): boolean {
  if (code === 0xfffd) return true; // what a decoder leaves of broken bytes
  return code < 32 ? code < 9 || code > 13 : code >= 127 && code < 160;
}
