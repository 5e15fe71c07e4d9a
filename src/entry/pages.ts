/** Results as pages, as text to paste and as a table. Loads d3, for the small pictures of a gallery. */
export { figuresTable, type TableCell } from '../sheet/csv/figuresTable.ts';
export { benchPage } from '../sheet/html/bench/benchPage.ts';
export { capturePage } from '../sheet/html/capture/capturePage.ts';
export type { Gallery } from '../sheet/html/gallery/galleryPage.ts';
export { galleryPage } from '../sheet/html/gallery/galleryPage.ts';
export type { PagePress } from '../sheet/html/htmlPage.ts';
export type { LinkedFile } from '../sheet/html/linkedFile.ts';
export { benchMarkdown } from '../sheet/markdown/benchMarkdown.ts';
export { captureMarkdown } from '../sheet/markdown/captureMarkdown.ts';
