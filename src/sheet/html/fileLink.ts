/**
 * The address of a file in the page's own folder. It starts with `./`, so that no name is taken for a scheme
 * (`javascript:`), a host or a fragment, and whatever means something in an address is escaped.
 *
 * @param name - of a file, no path.
 * @throws RangeError for a path: a page links to its own folder only.
 */
export function fileLink(name: string): string {
  if (/[\\/]/.test(name) || name === '..' || name === '.') {
    throw new RangeError(`a page links to files of its own folder, not to ${name}`);
  }
  // Half a surrogate pair has no address; no file system gives one, but a name may be made up.
  return `./${encodeURIComponent(name.replace(/\p{Cs}/gu, '\ufffd'))}`;
}
