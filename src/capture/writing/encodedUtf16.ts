/** Text as UTF-16, little end first, with its byte order mark. @see RFC 2781 */
export function encodedUtf16(text: string): Uint8Array {
  const units = new Uint8Array(2 * (text.length + 1));
  const view = new DataView(units.buffer);
  view.setUint16(0, 0xfeff, true);
  for (let i = 0; i < text.length; i++) view.setUint16(2 * (i + 1), text.charCodeAt(i), true);
  return units;
}
