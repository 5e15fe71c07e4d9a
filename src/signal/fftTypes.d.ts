declare module 'fft.js' {
  /** Radix-4 FFT of a fixed power-of-two size ≥ 2, complex arrays interleaved. */
  export default class FFT {
    constructor(size: number);
    /** cos and −sin of 2πk/size in turn. */
    table: number[] | Float64Array;
    transform(out: number[] | Float64Array, data: ArrayLike<number>): void;
    inverseTransform(out: number[] | Float64Array, data: ArrayLike<number>): void;
  }
}
