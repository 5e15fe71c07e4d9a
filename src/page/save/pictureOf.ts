const WIDTH_PX = 1920;
const HEIGHT_PX = 1080;

/**
 * A sheet as a PNG picture of 1920 × 1080, drawn by the browser in the typeface that the sheet carries.
 *
 * @param svg - text of an SVG file of 16 to 9.
 */
export async function pictureOf(document: Document, svg: string): Promise<Blob> {
  const address = URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' }));
  try {
    const image = document.createElement('img');
    image.src = address;
    await image.decode();
    const canvas = document.createElement('canvas');
    canvas.width = WIDTH_PX;
    canvas.height = HEIGHT_PX;
    canvas.getContext('2d')?.drawImage(image, 0, 0, WIDTH_PX, HEIGHT_PX);
    const blob = await new Promise<Blob | null>((done) => canvas.toBlob(done, 'image/png'));
    if (blob === null) throw new Error('this browser made no picture of the sheet');
    return blob;
  } finally {
    URL.revokeObjectURL(address);
  }
}
