import type { BenchPoint } from '../../bench/benchDocument.ts';

/** Neighbouring loads with one kind of wave. */
export interface KindRun {
  /** `pure sine`, `distorted sine, at the edge`. */
  readonly words: string;
  readonly fromW: number;
  readonly toW: number;
}

/** The kinds of wave along the load; captures of unknown load are left out. */
export function kindRuns(points: readonly BenchPoint[]): KindRun[] {
  const runs: KindRun[] = [];
  for (const { loadW, kind, atTheEdge, lost, loadKind } of points) {
    // Where the output was lost, what is classified need not be of that load.
    if (loadW.value === null || lost !== undefined) continue;
    const words =
      kind + (atTheEdge ? ', at the edge' : '') + (loadKind === undefined ? '' : `, ${loadKind} load`);
    const last = runs.at(-1);
    if (last?.words === words) runs[runs.length - 1] = { ...last, toW: loadW.value };
    else runs.push({ words, fromW: loadW.value, toW: loadW.value });
  }
  return runs;
}
