/** Three digits: "229 V". */
export function inVolts(value: number): string {
  return `${Number(value.toPrecision(3))} V`;
}
