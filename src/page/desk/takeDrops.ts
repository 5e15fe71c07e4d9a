/** The whole page takes what is dropped on it. */
export function takeDrops(document: Document, take: (transfer: DataTransfer) => void): void {
  const isFile = (event: DragEvent): boolean => event.dataTransfer?.types.includes('Files') ?? false;
  document.addEventListener('dragover', (event) => {
    if (!isFile(event)) return;
    event.preventDefault();
    document.body.classList.add('dropping');
  });
  document.addEventListener('dragleave', (event) => {
    if (event.relatedTarget === null) document.body.classList.remove('dropping');
  });
  document.addEventListener('drop', (event) => {
    document.body.classList.remove('dropping');
    if (event.dataTransfer === null || !isFile(event)) return;
    event.preventDefault();
    take(event.dataTransfer);
  });
}
