import type { MeasureResult } from '../../assay/measureDocument.ts';
import type { BenchUnit } from '../../bench/benchDocument.ts';
import type { CompareDocument } from '../../bench/compare/compareDocument.ts';
import { fileName } from '../../words/text.ts';

/** A capture as results name it. */
interface NamedCapture {
  readonly file: string;
  readonly sha256: string;
}

/**
 * Names of captures as they may be published: without folders, which tell of a person's machine and work; the first
 * eight digits of the digest behind a name tell two captures of one name apart.
 *
 * @param captures - of one publication.
 * @returns what a capture of these is called.
 * @example publishedNames([{ file: 'evening/1/a.csv', sha256 }])({ file: 'evening/1/a.csv', sha256 }) // 'a.csv'
 */
export function publishedNames(captures: readonly NamedCapture[]): (capture: NamedCapture) => string {
  const digests = new Map<string, Set<string>>();
  for (const { file, sha256 } of captures) {
    const key = keyOf(file);
    digests.set(key, (digests.get(key) ?? new Set()).add(sha256));
  }
  return ({ file, sha256 }) => {
    const isShared = (digests.get(keyOf(file))?.size ?? 0) > 1;
    return isShared ? `${fileName(file)} (${sha256.slice(0, 8)})` : fileName(file);
  };
}

/** Some file systems don't tell upper case from lower. */
function keyOf(file: string): string {
  return fileName(file).toLowerCase();
}

/** What was told of a capture, without the folder of the file that its current was taken from. */
export function publishedOptions<T extends { readonly current?: string }>(
  options: T,
  { capture }: { readonly capture: Pick<MeasureResult['capture'], 'channels'> },
): T {
  const { current } = options;
  // A channel's own name may hold a slash.
  if (current === undefined || capture.channels.some(({ name }) => name === current)) return options;
  return { ...options, current: fileName(current) };
}

/** A comparison of two captures without their folders. */
export function publishedComparison(result: CompareDocument): CompareDocument {
  const { a, b } = result;
  const name = publishedNames([a, b]);
  return { ...result, a: { ...a, file: name(a) }, b: { ...b, file: name(b) } };
}

/** A unit of an earlier document, which may have been written before folders were left out. */
export function publishedUnit(unit: BenchUnit): BenchUnit {
  const bare = <T extends { readonly file: string }>(items: readonly T[]): readonly T[] =>
    items.map((item) => ({ ...item, file: fileName(item.file) }));
  return {
    ...unit,
    points: bare(unit.points).map((point) =>
      point.sheet === undefined ? point : { ...point, sheet: fileName(point.sheet) },
    ),
    steps: bare(unit.steps),
    transfers: bare(unit.transfers),
    ...(unit.overloads === undefined ? {} : { overloads: bare(unit.overloads) }),
    claims: unit.claims.map((claim) =>
      typeof claim.worstFile === 'string' ? { ...claim, worstFile: fileName(claim.worstFile) } : claim,
    ),
  };
}
