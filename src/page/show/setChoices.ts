/** What a select offers: a value and its words each. Left alone where it offers that already. */
export function setChoices(
  select: HTMLSelectElement,
  choices: readonly (readonly [value: string, words: string])[],
  chosen: string,
): void {
  const offered = [...select.options];
  const isSame =
    offered.length === choices.length &&
    choices.every(([value, words], i) => offered[i]?.value === value && offered[i]?.text === words);
  if (!isSame) select.replaceChildren(...choices.map(([value, words]) => new Option(words, value)));
  select.value = chosen;
}
