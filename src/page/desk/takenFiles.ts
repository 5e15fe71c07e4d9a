import { wordedError } from '../../entry/measuring.ts';
import type { NamedFile } from './sitting.ts';

/** Files that a person chose; those of a folder with the folder before their name. */
export function chosenFiles(list: Iterable<File>): NamedFile[] {
  return [...list].map((file) => ({ name: file.webkitRelativePath || file.name, file })).filter(isCapture);
}

/**
 * What was dropped: files, and all files under folders.
 *
 * @throws MeasureError `folder.unreadable` where the browser lets no page look into a folder.
 */
export async function droppedFiles(transfer: DataTransfer): Promise<NamedFile[]> {
  // What was dropped is gone once the event is over: taken at once, read later.
  const taken = [...transfer.items].map((item: DroppedItem) => {
    const entry = item.webkitGetAsEntry();
    const folder = entry?.isDirectory ? (item.getAsFileSystemHandle?.() ?? entry) : null;
    return { folder, file: item.getAsFile() };
  });
  const found = await Promise.all(
    taken.map(async ({ folder, file }) => {
      if (folder !== null) return filesUnder(await folder);
      return file === null ? [] : [{ name: file.name, file }];
    }),
  );
  return found.flat().filter(isCapture);
}

/** An item that, in some browsers, gives a handle too: the only way into a folder for a page from the file system there. */
interface DroppedItem extends DataTransferItem {
  readonly getAsFileSystemHandle?: () => Promise<FolderHandle>;
}

interface FolderHandle {
  readonly kind: 'directory';
  readonly name: string;
  readonly values: () => AsyncIterable<FolderHandle | FileHandle>;
}

interface FileHandle {
  readonly kind: 'file';
  readonly name: string;
  readonly getFile: () => Promise<File>;
}

/** A folder holds other things too: screenshots, notes, settings, and the marks of file systems. */
function isCapture({ name }: NamedFile): boolean {
  return (
    !/(^|\/)(\.|~)|\.(png|jpe?g|gif|bmp|svg|pdf|html?|md|ya?ml|json|zip|mp4|mov|docx?|ini|db)$/i.test(name) ||
    !name.includes('/')
  );
}

type Listed = FileHandle | FolderHandle | FileSystemEntry;

async function filesUnder(one: Listed, before = ''): Promise<NamedFile[]> {
  const name = `${before}${one.name}`;
  if ('kind' in one ? one.kind === 'file' : one.isFile) return [{ name, file: await fileOf(one) }];
  const listed = await listedIn(one);
  listed.sort((a, b) => (a.name < b.name ? -1 : 1));
  return (await Promise.all(listed.map((each) => filesUnder(each, `${name}/`)))).flat();
}

function fileOf(one: Listed): Promise<File> {
  if ('getFile' in one) return one.getFile();
  return new Promise((done, fail) => (one as FileSystemFileEntry).file(done, fail));
}

async function listedIn(folder: Listed): Promise<Listed[]> {
  const listed: Listed[] = [];
  try {
    if ('values' in folder) {
      for await (const one of folder.values()) listed.push(one);
      return listed;
    }
    const reader = (folder as FileSystemDirectoryEntry).createReader();
    // A reader gives a hundred at a time, and none when there are no more.
    for (;;) {
      const more = await new Promise<FileSystemEntry[]>((done, fail) => reader.readEntries(done, fail));
      if (more.length === 0) return listed;
      listed.push(...more);
    }
  } catch (problem) {
    if (!(problem instanceof DOMException)) throw problem;
    throw wordedError('folder.unreadable', `The folder ${folder.name} can’t be looked into.`, {
      advice: 'Choose it with the button, or drop the files that are in it.',
    });
  }
}

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
