/** The weights of the typeface that a sheet uses, as CSS numbers: regular and semi-bold. */
export type TextWeight = 400 | 600;
