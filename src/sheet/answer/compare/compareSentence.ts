import type { Figure } from '../../../base/figure.ts';
import type { CompareDocument, Difference } from '../../../bench/compare/compareDocument.ts';
import { figureParts } from '../../numbers/figureParts.ts';
import { figureText } from '../../numbers/figureText.ts';
import { withUnit } from '../../numbers/withUnit.ts';
import { capitalised } from '../capitalised.ts';

/** Asked about first, in this order. */
const asked: readonly (readonly [key: string, name: string])[] = [
  ['voltage.thdPercent', 'distortion'],
  ['voltage.rmsV', 'voltage'],
  ['voltage.crestFactor', 'crest factor'],
  ['voltage.frequencyHz', 'frequency'],
];

/**
 * What a comparison comes to, in one sentence: "A is a pure sine, B a modified sine; B has more distortion, 41.5 %
 * against 1.3 % (a difference of 40.2 ± 0.4 points), and a lower crest factor; voltage can’t be told apart."
 */
export function compareSentence({ kind, differences }: CompareDocument): string {
  const found = asked.flatMap(([key, name]) => {
    const difference = differences.find((one) => one.key === key);
    return difference === undefined ? [] : [{ name, difference }];
  });
  const edge = kind.significant === null ? ', one of them at the edge' : '';
  const kinds = kind.a === kind.b ? [] : [`A is ${article(kind.a)}, B ${article(kind.b)}${edge}`];
  const larger = found.filter(({ difference }) => difference.significant);
  const moved = larger.map(({ name, difference }, i) =>
    i === 0 ? directionOf(name, difference) + amountOf(difference) : directionOf(name, difference),
  );
  const alike = found.filter(({ difference }) => difference.significant === false).map(({ name }) => name);
  const parts = [
    ...kinds,
    ...(moved.length === 0 ? [] : [`B has ${listed(moved)}`]),
    ...(alike.length === 0 ? [] : [`${listed(alike)} can’t be told apart`]),
  ];
  return parts.length === 0
    ? 'They have no figure in common that can be compared.'
    : `${capitalised(parts.join('; '))}.`;
}

function directionOf(name: string, { difference }: Difference): string {
  const isMore = (difference.value ?? 0) > 0;
  const isAmount = name === 'distortion' || name === 'voltage';
  return isAmount ? `${isMore ? 'more' : 'less'} ${name}` : `a ${isMore ? 'higher' : 'lower'} ${name}`;
}

function amountOf({ a, b, unit, difference }: Difference): string {
  const size =
    difference.value === null
      ? ''
      : ` (a difference of ${figureText({ ...difference, value: Math.abs(difference.value) }, unit === '%' ? 'points' : unit)})`;
  return `, ${valueText(b, unit)} against ${valueText(a, unit)}${size}`;
}

/** To the place of its uncertainty, which the table has. */
function valueText(figure: Figure, unit: string): string {
  return figure.value === null || figure.notAbove !== undefined
    ? figureText(figure, unit)
    : withUnit(figureParts(figure).value, unit);
}

function article(kind: CompareDocument['kind']['a']): string {
  if (kind === 'not classified') return kind;
  return kind === 'stepped' || kind === 'square' ? `a ${kind} wave` : `a ${kind}`;
}

function listed(names: readonly string[]): string {
  return names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
}
