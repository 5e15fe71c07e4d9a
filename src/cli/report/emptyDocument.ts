/** A document to draw with. jsdom takes half a second to load: only when something is drawn. */
export async function emptyDocument(): Promise<Document> {
  const { JSDOM } = await import('jsdom');
  return new JSDOM().window.document;
}
