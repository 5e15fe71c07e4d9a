/** Results as pages, as text to paste and as a table. Loads d3, for the small pictures of a gallery. */
export { figuresTable, type TableCell } from '../publish/figuresTable.ts';
export { benchPage } from '../publish/html/benchPage.ts';
export { capturePage } from '../publish/html/capturePage.ts';
export type { Gallery } from '../publish/html/galleryPage.ts';
export { galleryPage } from '../publish/html/galleryPage.ts';
export type { LinkedFile } from '../publish/html/html.ts';
export type { PagePress } from '../publish/html/htmlPage.ts';
export { benchMarkdown } from '../publish/markdown/benchMarkdown.ts';
export { captureMarkdown } from '../publish/markdown/captureMarkdown.ts';
