/** The bytes of a file that need not be in memory. */
export interface ByteSource {
  readonly byteLength: number;
  /**
   * Fills an array with the file's bytes.
   *
   * @param from - offset in the file.
   * @returns how many there were: fewer than the array holds only at the file's end.
   */
  readonly read: (from: number, into: Uint8Array) => number;
}
