/** A sheet as a picture that says within which captures it is of. @param sha256 - of the captures. */
export async function picturePng(svg: string, sha256: readonly string[]): Promise<Uint8Array> {
  const { renderPng } = await import('./renderPng.ts');
  const { sealedPng } = await import('./sealedPng.ts');
  return sealedPng(renderPng(svg), `sineassay: capture with SHA-256 ${sha256.join(', ')}`);
}
