import type { NamedFile } from './sitting.ts';

/** Files that a person chose; those of a folder with the folder before their name. */
export function chosenFiles(list: FileList): NamedFile[] {
  return [...list].map((file) => ({ name: file.webkitRelativePath || file.name, file })).filter(isCapture);
}

/** What was dropped: files, and all files under folders. */
export async function droppedFiles(transfer: DataTransfer): Promise<NamedFile[]> {
  // Entries are gone once the event is over: taken at once, read later.
  const entries = [...transfer.items]
    .map((item) => item.webkitGetAsEntry())
    .filter((entry) => entry !== null);
  if (entries.length === 0) return chosenFiles(transfer.files);
  const found = (await Promise.all(entries.map(filesUnder))).flat();
  return found.filter((one) => found.length === 1 || isCapture(one));
}

/** A folder holds other things too: screenshots, notes, settings, and the marks of file systems. */
function isCapture({ name }: NamedFile): boolean {
  return (
    !/(^|\/)(\.|~)|\.(png|jpe?g|gif|bmp|svg|pdf|html?|md|ya?ml|json|zip|mp4|mov|docx?|ini|db)$/i.test(name) ||
    !name.includes('/')
  );
}

async function filesUnder(entry: FileSystemEntry): Promise<NamedFile[]> {
  if (entry.isFile) {
    const file = await new Promise<File>((done, fail) => (entry as FileSystemFileEntry).file(done, fail));
    return [{ name: entry.fullPath.replace(/^\//, ''), file }];
  }
  const reader = (entry as FileSystemDirectoryEntry).createReader();
  const entries: FileSystemEntry[] = [];
  // A reader gives a hundred at a time, and none when there are no more.
  for (;;) {
    const more = await new Promise<FileSystemEntry[]>((done, fail) => reader.readEntries(done, fail));
    if (more.length === 0) break;
    entries.push(...more);
  }
  entries.sort((a, b) => (a.name < b.name ? -1 : 1));
  return (await Promise.all(entries.map(filesUnder))).flat();
}
