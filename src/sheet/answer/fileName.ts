/** The last part of a path of any system: what a sheet that gets published may show of where a capture lay. */
export function fileName(path: string): string {
  return path.split(/[\\/]/).at(-1) || path;
}
