const escapes: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };

/** Text made harmless between the tags and within the quoted attributes of XML and HTML. */
export function escaped(text: string): string {
  return text.replace(/[&<>"]/g, (character) => escapes[character] ?? character);
}

/** Text made harmless between the tags only, where quotes mean nothing. */
export function escapedBetweenTags(text: string): string {
  return text.replace(/[&<>]/g, (character) => escapes[character] ?? character);
}
