import { cos, sin } from '../base/elementary.ts';
import type { HarmonicFit } from './harmonicFit.ts';
import { fourier, powerOfTwoAtLeast } from './spectrum.ts';

/** What each order does from cycle to cycle, beside the fit over all of them. */
export interface CycleOrders {
  /** Shape K a cell: what the cell adds to the fit's cosine of each order, in U; u = 0 at the record's centre. */
  readonly cosine: readonly Float64Array[];
  readonly sine: readonly Float64Array[];
  /** Middle of each cell, in samples from the record's centre. */
  readonly centres: readonly number[];
  /**
   * Variance of the mean over the record, of cycles that differ without order, over the variance seen between cells:
   * 1/M of M cells that part the record, more where they share samples or leave some out.
   */
  readonly meanShare: number;
  /** Of such cycles: the mean square of the change from cell to cell over the variance between cells; 2 or less. */
  readonly changeShare: number;
}

/** Cells that tell what a record's cycles do; more would tell no more. */
const MOST_CELLS = 16;
/** Bins that a cell's cycle is folded into: order 50 stands at a fifth of their rate. */
const FEWEST_BINS = 256;

/**
 * The orders of single cycles (of several together, where there are more than sixteen), spread evenly over the record
 * from end to end.
 *
 * @returns null below 1.1 periods, where no two cells differ. From there on two cells that share samples: what they
 * share can't differ, and `meanShare` makes up for it.
 */
export function cycleOrders(fit: HarmonicFit): CycleOrders | null {
  const { length } = fit.residual;
  const period = (2 * Math.PI) / fit.omega;
  const cycles = length / period;
  if (cycles < 1.1) return null;
  const together = Math.max(1, Math.floor(cycles / MOST_CELLS));
  const cell = Math.min(length, Math.round(together * period));
  // A tenth of a cycle more than whole ones is no cell of its own.
  const count = Math.min(MOST_CELLS, Math.max(2, Math.ceil(cycles / together - 0.1)));
  const spacing = (length - cell) / (count - 1);
  const read = cellReader(fit, cell);
  const from = Array.from({ length: count }, (_, i) => Math.round(i * spacing));
  const cells = from.map(read);
  let shared = 0;
  for (let apart = 1; apart < count; apart++) {
    shared += 2 * (count - apart) * Math.max(0, 1 - (apart * spacing) / cell);
  }
  const parted = 1 - shared / (count * (count - 1));
  return {
    cosine: cells.map(({ cosine }) => cosine),
    sine: cells.map(({ sine }) => sine),
    centres: from.map((start) => start + (cell - length) / 2),
    meanShare: cell / length / parted,
    changeShare: (2 * Math.min(1, spacing / cell)) / parted,
  };
}

type OrdersOfCell = { readonly cosine: Float64Array; readonly sine: Float64Array };

/** Reads cells of so many samples: folded onto one cycle where that has room, else order by order. */
function cellReader(fit: HarmonicFit, cell: number): (from: number) => OrdersOfCell {
  const orders = fit.cosine.length;
  const bins = powerOfTwoAtLeast(Math.max(FEWEST_BINS, 4 * orders));
  const room = new Float64Array(cell);
  const centre = (fit.residual.length - 1) / 2;
  const isFolded = (2 * Math.PI) / fit.omega >= bins;
  return (from) => {
    const left = fit.residual.stretch(from, from + cell, room);
    const start = fit.omega * (from - centre);
    return isFolded ? folded(left, start, fit.omega, orders, bins) : summed(left, start, fit.omega, orders);
  };
}

function folded(
  left: Float64Array,
  start: number,
  omega: number,
  orders: number,
  size: number,
): OrdersOfCell {
  const sums = new Float64Array(size);
  const step = (omega / (2 * Math.PI)) * size;
  const first = (start / (2 * Math.PI)) * size;
  const place = first - size * Math.floor(first / size);
  let count = 0;
  for (let n = 0; n < left.length; n++) {
    const r = left[n]!;
    if (Number.isNaN(r)) continue;
    count++;
    sums[Math.floor(place + step * n) & (size - 1)]! += r;
  }
  const { re, im } = fourier(size).spectrum(sums);
  const scale = 2 / Math.max(1, count);
  const cosine = new Float64Array(orders);
  const sine = new Float64Array(orders);
  for (let k = 1; k <= orders; k++) {
    // A bin's samples stand half a bin behind its beginning.
    const half = (Math.PI * k) / size;
    const [c, s] = [cos(half), sin(half)];
    cosine[k - 1] = scale * (re[k]! * c + im[k]! * s);
    sine[k - 1] = scale * (re[k]! * s - im[k]! * c);
  }
  return { cosine, sine };
}

function summed(left: Float64Array, start: number, omega: number, orders: number): OrdersOfCell {
  const cosine = new Float64Array(orders);
  const sine = new Float64Array(orders);
  let count = 0;
  for (let n = 0; n < left.length; n++) {
    const r = left[n]!;
    if (Number.isNaN(r)) continue;
    count++;
    const [stepRe, stepIm] = [cos(start + omega * n), sin(start + omega * n)];
    let [re, im] = [stepRe, stepIm];
    for (let k = 0; k < orders; k++) {
      cosine[k]! += r * re;
      sine[k]! += r * im;
      const nextRe = re * stepRe - im * stepIm;
      im = re * stepIm + im * stepRe;
      re = nextRe;
    }
  }
  const scale = 2 / Math.max(1, count);
  return { cosine: cosine.map((sum) => scale * sum), sine: sine.map((sum) => scale * sum) };
}
