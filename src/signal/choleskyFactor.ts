/** A symmetric positive definite matrix, row-major, size × size. */
export interface SymmetricMatrix {
  readonly size: number;
  readonly values: Float64Array;
}

/** The lower triangle L with L·Lᵀ = A, ready to solve with. */
export interface CholeskyFactor {
  /** The x with A·x = b. `b` is not changed. */
  solve(b: Float64Array): Float64Array;
  /** The diagonal of A⁻¹: the variances, when A is a Fisher information. */
  inverseDiagonal(): Float64Array;
}

/**
 * Cholesky factor of a symmetric positive definite matrix.
 *
 * @param matrix - only the lower triangle is read. Not changed.
 * @returns the factor, or null where the matrix is not positive definite to working precision.
 * @see G. H. Golub, C. F. Van Loan, "Matrix Computations", 4th ed., algorithm 4.2.2 (from memory).
 */
export function choleskyFactor(matrix: SymmetricMatrix): CholeskyFactor | null {
  const n = matrix.size;
  const lower = Float64Array.from(matrix.values);
  for (let j = 0; j < n; j++) {
    let pivot = lower[j * n + j]!;
    const scale = pivot;
    for (let k = 0; k < j; k++) pivot -= lower[j * n + k]! ** 2;
    // A pivot that has lost all its digits means two columns that can't be told apart.
    if (!(pivot > 1e-13 * scale)) return null;
    const root = Math.sqrt(pivot);
    lower[j * n + j] = root;
    for (let i = j + 1; i < n; i++) {
      let sum = lower[i * n + j]!;
      for (let k = 0; k < j; k++) sum -= lower[i * n + k]! * lower[j * n + k]!;
      lower[i * n + j] = sum / root;
    }
  }
  return {
    solve: (b) => backward(lower, n, forward(lower, n, b)),
    inverseDiagonal: () => inverseDiagonal(lower, n),
  };
}

function forward(lower: Float64Array, n: number, b: Float64Array): Float64Array {
  const y = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    let sum = b[i]!;
    for (let k = 0; k < i; k++) sum -= lower[i * n + k]! * y[k]!;
    y[i] = sum / lower[i * n + i]!;
  }
  return y;
}

function backward(lower: Float64Array, n: number, y: Float64Array): Float64Array {
  const x = new Float64Array(n);
  for (let i = n - 1; i >= 0; i--) {
    let sum = y[i]!;
    for (let k = i + 1; k < n; k++) sum -= lower[k * n + i]! * x[k]!;
    x[i] = sum / lower[i * n + i]!;
  }
  return x;
}

/** A⁻¹ = L⁻ᵀ·L⁻¹, so its diagonal holds the squared lengths of the columns of L⁻¹. */
function inverseDiagonal(lower: Float64Array, n: number): Float64Array {
  const diagonal = new Float64Array(n);
  const unit = new Float64Array(n);
  for (let j = 0; j < n; j++) {
    unit.fill(0);
    unit[j] = 1;
    const column = forward(lower, n, unit);
    for (let i = j; i < n; i++) diagonal[j]! += column[i]! ** 2;
  }
  return diagonal;
}
