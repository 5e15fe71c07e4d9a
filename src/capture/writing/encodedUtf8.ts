/** Text as UTF-8 without a mark. Half surrogates become the replacement mark. @see RFC 3629 */
export function encodedUtf8(text: string): Uint8Array {
  // No UTF-16 unit takes more than three bytes.
  const bytes = new Uint8Array(3 * text.length);
  let length = 0;
  const push = (byte: number): void => {
    bytes[length++] = byte;
  };
  const pushTail = (point: number, shift: number): void => push(0x80 | ((point >> shift) & 0x3f));
  for (const character of text) {
    const given = character.codePointAt(0) as number;
    const point = given >= 0xd800 && given < 0xe000 ? 0xfffd : given;
    if (point < 0x80) {
      push(point);
    } else if (point < 0x800) {
      push(0xc0 | (point >> 6));
      pushTail(point, 0);
    } else if (point < 0x10000) {
      push(0xe0 | (point >> 12));
      pushTail(point, 6);
      pushTail(point, 0);
    } else {
      push(0xf0 | (point >> 18));
      pushTail(point, 12);
      pushTail(point, 6);
      pushTail(point, 0);
    }
  }
  return bytes.slice(0, length);
}
