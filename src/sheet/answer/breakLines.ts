/** How a paragraph is broken for a terminal. */
export interface LineBreaks {
  /** Characters a line, indent included; at least 20. */
  readonly width: number;
  /** Put before the first line. */
  readonly lead: string;
  /** Put before every further line. */
  readonly indent: string;
}

/**
 * Breaks a paragraph at its blanks (never at a no-break space) into lines of a terminal; a word longer than a
 * line stands alone and sticks out, so that a path stays whole and can be copied. Nothing is cut.
 */
export function breakLines(paragraph: string, { width, lead, indent }: LineBreaks): string[] {
  const lines: string[] = [];
  let line = lead;
  let isFresh = true;
  for (const word of paragraph.split(' ')) {
    if (!isFresh && length(line) + 1 + length(word) > width) {
      lines.push(line);
      line = indent + word;
    } else {
      line += isFresh ? word : ` ${word}`;
    }
    isFresh = false;
  }
  return [...lines, line];
}

function length(text: string): number {
  return [...text].length;
}
