const words: Readonly<Record<string, string>> = {
  EACCES: 'no permission',
  EEXIST: 'a file of that name in the way',
  EISDIR: 'a folder of that name',
  ELOOP: 'a link that leads back to itself',
  ENAMETOOLONG: 'a name that is too long',
  ENOENT: 'no such file or folder',
  ENOSPC: 'a full disk',
  ENXIO: 'a device or socket that nothing answers from',
  ENOTDIR: 'a file where a folder should be',
  EPERM: 'no permission',
  EROFS: 'a disk that can only be read',
};

/** What stood in the way of reading or writing a file, in words, or as the system's own code. */
export function systemReason(error: unknown): string {
  const code = error instanceof Error && 'code' in error ? String(error.code) : String(error);
  return words[code] ?? code;
}
