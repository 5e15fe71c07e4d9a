import type { BenchPoint } from '../../bench/benchDocument.ts';

/** Neighbouring loads with one kind of wave. */
export interface KindRun {
  /** `pure sine`, `distorted sine, at the edge`. */
  readonly words: string;
  /** True where the words are what was seen of an output that was lost. */
  readonly isLost: boolean;
  readonly fromW: number;
  readonly toW: number;
}

/** The kinds of wave along the load; captures of unknown load are left out. */
export function kindRuns(points: readonly BenchPoint[]): KindRun[] {
  const runs: KindRun[] = [];
  for (const { loadW, kind, atTheEdge, lost, loadKind } of points) {
    if (loadW.value === null) continue;
    // Where the output was lost, what is classified need not be of that load.
    const words =
      lost ??
      kind + (atTheEdge ? ', at the edge' : '') + (loadKind === undefined ? '' : `, ${loadKind} load`);
    const last = runs.at(-1);
    const isLost = lost !== undefined;
    if (last?.words === words && last.isLost === isLost)
      runs[runs.length - 1] = { ...last, toW: loadW.value };
    else runs.push({ words, isLost, fromW: loadW.value, toW: loadW.value });
  }
  return runs;
}
