import { sealedSheet } from '../../entry/drawing.ts';
import type { CardTheme, Evidence } from '../../entry/evidence.ts';
import { type FailedResult, jsonText, type MeasureResult } from '../../entry/measuring.ts';
import { captureMarkdown, spokenLines } from '../../entry/sections.ts';
import { pagePress } from '../shipped.ts';
import type { MeasuredChannel } from '../worker/requests.ts';

/** What can be taken from a result. */
export type Saving = 'say' | 'svg' | 'png' | 'card' | 'card-dark' | 'json' | 'markdown';

/**
 * Saves or copies one thing of a result.
 *
 * @returns what was done, in words.
 */
export async function saveResult(
  document: Document,
  what: Saving,
  { result, wave, changes }: MeasuredChannel,
): Promise<string> {
  const stem = stemOf(result.file);
  const copied = async (words: string, text: string): Promise<string> =>
    (await copyText(document, text))
      ? `${words} copied.`
      : 'This browser does not let the page copy: save instead.';
  const saveSheet = (name: string, evidence: Evidence): string => {
    saveText(document, name, sealedSheet(pagePress(document), evidence), 'image/svg+xml');
    return name;
  };
  switch (what) {
    case 'say':
      return copied('Two sentences', spokenLines(result).join(' '));
    case 'markdown':
      return copied('Markdown', `${captureMarkdown(wave, `${stem}.svg`)}\n`);
    case 'json':
      return saveJson(document, [result], `${stem}.json`);
    case 'svg': {
      const names = [
        saveSheet(`${stem}.svg`, wave),
        ...(changes === null ? [] : [saveSheet(`${stem}-changes.svg`, changes)]),
      ];
      return `Saved ${names.join(' and ')}.`;
    }
    case 'png':
      return savePicture(document, `${stem}.png`, wave);
    case 'card':
      return savePicture(document, `${stem}-card.png`, cardOf(wave, changes, 'light'));
    case 'card-dark':
      return savePicture(document, `${stem}-card.png`, cardOf(wave, changes, 'dark'));
  }
}

/** Results as one document, as the command line prints them. @returns what was done, in words. */
export function saveJson(
  document: Document,
  results: readonly (MeasureResult | FailedResult)[],
  name: string,
): string {
  const text = `${jsonText({ schema: 'sineassay/measure@1', results }, 2)}\n`;
  saveText(document, name, text, 'application/json');
  return `Saved ${name}.`;
}

/** A sheet as a picture. @returns what was done, in words. */
export async function savePicture(document: Document, name: string, evidence: Evidence): Promise<string> {
  const svg = sealedSheet(pagePress(document), evidence);
  saveFile(document, name, await pictureOf(document, svg));
  return `Saved ${name}.`;
}

export function saveText(document: Document, name: string, text: string, type: string): void {
  saveFile(document, name, new Blob([text], { type }));
}

/** A file's name without folder and ending. */
function stemOf(file: string): string {
  return file.replace(/^.*[\\/]/, '').replace(/\.[^.]*$/, '');
}

function cardOf(
  { picture: _, dynamics: __, ...carried }: MeasuredChannel['wave'],
  changes: MeasuredChannel['changes'],
  theme: CardTheme,
): Evidence {
  return { ...carried, picture: 'card', theme, dynamics: changes?.dynamics ?? null };
}

/**
 * Puts a text on the clipboard.
 *
 * @returns false where the browser doesn't allow it.
 */
async function copyText(document: Document, text: string): Promise<boolean> {
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

const WIDTH_PX = 1920;
const HEIGHT_PX = 1080;

/**
 * A sheet as a PNG picture of 1920 × 1080, drawn by the browser in the typeface that the sheet carries.
 *
 * @param svg - text of an SVG file of 16 to 9.
 */
async function pictureOf(document: Document, svg: string): Promise<Blob> {
  const address = URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' }));
  try {
    const image = document.createElement('img');
    image.src = address;
    await image.decode();
    const canvas = document.createElement('canvas');
    canvas.width = WIDTH_PX;
    canvas.height = HEIGHT_PX;
    canvas.getContext('2d')?.drawImage(image, 0, 0, WIDTH_PX, HEIGHT_PX);
    const blob = await new Promise<Blob | null>((done) => canvas.toBlob(done, 'image/png'));
    if (blob === null) throw new Error('this browser made no picture of the sheet');
    return blob;
  } finally {
    URL.revokeObjectURL(address);
  }
}

/** Has the browser save a file under a name, in the way it saves all. */
function saveFile(document: Document, name: string, content: Blob): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(content);
  link.download = name;
  link.click();
  // The browser has taken the file once the click is through.
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}
