/**
 * Puts a text on the clipboard.
 *
 * @returns false where the browser doesn't allow it.
 */
export async function copyText(document: Document, text: string): Promise<boolean> {
  try {
    await navigator.clipboard.writeText(text);
    return true;
  } catch {
    // Older browsers, and those that ask and are refused, still copy what is selected.
    const field = document.createElement('textarea');
    field.value = text;
    document.body.append(field);
    field.select();
    const copied = document.execCommand('copy');
    field.remove();
    return copied;
  }
}
