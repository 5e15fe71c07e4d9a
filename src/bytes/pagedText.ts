import type { ByteSource } from './byteSource.ts';
import type { TextAccess } from './textAccess.ts';

const PAGE_LENGTH = 4096;

/**
 * The text of a file that is too large to hold, fetched page by page. Offsets are those of bytes: a character
 * that takes several of them counts as many, and is whole in `slice` only.
 */
export class PagedText implements TextAccess {
  readonly length: number;
  readonly #source: ByteSource;
  readonly #origin: number;
  readonly #decoder: TextDecoder;
  readonly #page: Uint8Array = new Uint8Array(PAGE_LENGTH);
  #pageFrom = -PAGE_LENGTH;

  /**
   * @param origin - offset of the first byte of text, behind a byte order mark.
   * @param encoding - one in which line ends and digits are the bytes of ASCII.
   */
  constructor(source: ByteSource, origin: number, encoding: 'utf-8' | 'latin-1') {
    this.length = source.byteLength - origin;
    this.#source = source;
    this.#origin = origin;
    this.#decoder = new TextDecoder(encoding === 'latin-1' ? 'latin1' : encoding, { ignoreBOM: true });
  }

  charCodeAt(at: number): number {
    if (at >= this.length) return Number.NaN;
    if (at < this.#pageFrom || at >= this.#pageFrom + PAGE_LENGTH) {
      this.#source.read(this.#origin + at, this.#page);
      this.#pageFrom = at;
    }
    return this.#page[at - this.#pageFrom]!;
  }

  slice(from: number, to: number): string {
    if (from >= this.#pageFrom && to <= this.#pageFrom + PAGE_LENGTH)
      return this.#decoder.decode(this.#page.subarray(from - this.#pageFrom, to - this.#pageFrom));
    const bytes = new Uint8Array(to - from);
    this.#source.read(this.#origin + from, bytes);
    return this.#decoder.decode(bytes);
  }
}
