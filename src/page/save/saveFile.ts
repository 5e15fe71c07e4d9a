/** Has the browser save a file under a name, in the way it saves all. */
export function saveFile(document: Document, name: string, content: Blob): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(content);
  link.download = name;
  link.click();
  // The browser has taken the file once the click is through.
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}
