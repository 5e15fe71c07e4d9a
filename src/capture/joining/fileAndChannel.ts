/**
 * A file and the channel meant in it, as `FILE:NAME` says, or a file alone.
 *
 * @returns channel null where none is named. The colon of a drive (`D:\evening\ch2.csv`) is part of the file.
 * @example fileAndChannel('ch2.csv:Clamp') // { file: 'ch2.csv', channel: 'Clamp' }
 */
export function fileAndChannel(text: string): { readonly file: string; readonly channel: string | null } {
  const at = text.lastIndexOf(':');
  const isDrive = at === 1 && /^[a-z]:[\\/]/i.test(text);
  const channel = text.slice(at + 1).trim();
  if (at <= 0 || isDrive || channel === '')
    return { file: at === text.length - 1 ? text.slice(0, at) : text, channel: null };
  return { file: text.slice(0, at), channel };
}
