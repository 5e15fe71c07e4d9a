import { cos } from '../../base/elementary/cos.ts';
import { log } from '../../base/elementary/log.ts';
import { sin } from '../../base/elementary/sin.ts';

/**
 * Numbers of the normal distribution, mean 0, standard deviation 1.
 *
 * @param uniform - gives independent numbers in [0, 1).
 * @see G. E. P. Box, M. E. Muller, Ann. Math. Statist. 29(2), 1958, 610-611
 */
export function gaussianNumbers(uniform: () => number): () => number {
  let spare: number | null = null;
  return () => {
    if (spare !== null) {
      const value = spare;
      spare = null;
      return value;
    }
    const radius = Math.sqrt(-2 * log(1 - uniform()));
    const angle = 2 * Math.PI * uniform();
    spare = radius * sin(angle);
    return radius * cos(angle);
  };
}
