/** ln 2 in two parts: the first short enough that a count of up to 2²⁰ times it is exact. */
export const LN2_HIGH = 0.6931471804855391;
export const LN2_LOW = 7.440617110012397e-11;
