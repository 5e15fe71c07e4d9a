import { noBreakSpace } from './withUnit.ts';

const gap = /(?<=\d) (?=(?:%|ppm|points|[munµkM]?(?:V|A|W|s|Hz|S\/s))(?![\p{L}\p{N}]))/gu;

/** A sentence whose numbers are held to their units by no-break spaces, so that a line never breaks between. */
export function holdUnits(sentence: string): string {
  return sentence.replace(gap, noBreakSpace);
}
