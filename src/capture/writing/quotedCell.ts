/** A text cell in double quotes, a quote within doubled. @see RFC 4180, section 2 */
export function quotedCell(text: string): string {
  return `"${text.replaceAll('"', '""')}"`;
}
