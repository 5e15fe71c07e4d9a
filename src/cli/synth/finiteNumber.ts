import { InvalidArgumentError } from 'commander';

/** The number that an option's text stands for. */
export function finiteNumber(text: string): number {
  const value = Number(text);
  if (text.trim() === '' || !Number.isFinite(value)) {
    throw new InvalidArgumentError('A number is expected, with a decimal point.');
  }
  return value;
}
