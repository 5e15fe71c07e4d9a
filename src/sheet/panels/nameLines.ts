import { cutText } from '../paper/cutText.ts';
import type { Box } from '../paper/page.ts';
import { spreadOut } from '../paper/spreadOut.ts';
import { type Panel, writeText } from '../paper/writeText.ts';

/** A name to the right of a plot, at the end of its line. */
export interface LineName {
  readonly text: string;
  /** Where its line ends, px. */
  readonly y: number;
  readonly ink: string;
}

const sizePx = 14;
const leading = 17;

/** Names lines at their right ends, moved apart where they would touch. */
export function nameLines(panel: Panel, names: readonly LineName[], plot: Box, widthPx: number): void {
  const x = plot.x + plot.width + 10;
  const places = spreadOut(
    names.map(({ y }) => y + 5),
    leading,
    [plot.y + 4, plot.y + plot.height],
  );
  names.forEach(({ text, ink }, i) => {
    writeText(panel, cutText(text, widthPx - 12, sizePx), x, places[i]!, { sizePx, ink });
  });
}
