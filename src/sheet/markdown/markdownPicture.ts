import { fileLink } from '../html/fileLink.ts';
import { markdownText } from './markdownText.ts';

/** A picture of the same folder, linked to itself in full size. @param says - for whoever can't see it. */
export function markdownPicture(name: string, says: string): string {
  // Parentheses end an address in Markdown, and encodeURIComponent leaves them.
  const address = fileLink(name).replaceAll('(', '%28').replaceAll(')', '%29');
  return `[![${markdownText(says)}](${address})](${address})`;
}
