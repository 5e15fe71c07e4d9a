import { createRequire } from 'node:module';
import { Resvg } from '@resvg/resvg-js';

const fontPackage = '@expo-google-fonts/source-sans-3';
const fontFiles = ['400Regular/SourceSans3_400Regular.ttf', '600SemiBold/SourceSans3_600SemiBold.ttf'];

/**
 * A sheet as a PNG picture, set in the shipped typeface whatever fonts the machine has.
 *
 * @param svg - text of an SVG file.
 * @param widthPx - of the picture; the height follows the sheet's shape (1920 × 1080 for 16 to 9).
 */
export function renderPng(svg: string, widthPx = 1920): Uint8Array {
  const { resolve } = createRequire(import.meta.url);
  const renderer = new Resvg(svg, {
    fitTo: { mode: 'width', value: widthPx },
    font: {
      fontFiles: fontFiles.map((file) => resolve(`${fontPackage}/${file}`)),
      loadSystemFonts: false,
      defaultFontFamily: 'Source Sans 3',
    },
  });
  return renderer.render().asPng();
}
