/** Tells whether a file that stands in the way is an earlier output of this program, to be written over. */
export type OwnTest = (there: Buffer) => boolean;

/** One about all of these captures. @param sha256 - of the captures' bytes. */
export function ownOutput(sha256: readonly string[]): OwnTest {
  return (there) => isOurs(there) && sha256.every((digest) => there.includes(digest));
}

/** One about some of these captures: a bench test grows over an evening. */
export function ownBenchOutput(sha256: readonly string[]): OwnTest {
  return (there) => isOurs(there) && sha256.some((digest) => there.includes(digest));
}

/** One about none but these captures: a table of more would lose rows. */
export function ownTable(sha256: readonly string[]): OwnTest {
  return (there) =>
    isOurs(there) &&
    (there.toString('latin1').match(/\b[0-9a-f]{64}\b/g) ?? []).every((digest) => sha256.includes(digest));
}

/** A page that says that this program made it: it is made anew from what lies beside it, so that nothing is lost. */
export function ownGallery(there: Buffer): boolean {
  return there.includes('<meta name="generator" content="sineassay ');
}

/** The offline page, whatever its version. */
export function ownPage(there: Buffer): boolean {
  return there.includes('<title>Sineassay: is it a sine?</title>');
}

/** Each of our outputs names the program somewhere. */
function isOurs(there: Buffer): boolean {
  return there.includes('sineassay');
}
