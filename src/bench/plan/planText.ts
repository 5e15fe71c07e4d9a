import { loadInFileName } from '../../assay/loadSeen.ts';
import type { AssayResult } from '../../assay/measureDocument.ts';
import { planKeys } from '../../assay/options/optionLists.ts';
import { claimExamples, unitClaimExamples } from '../../judge/claims/claimedQuantities.ts';

const HEAD = `# A bench test. Correct the guesses, fill in what you know, take the # away where a line should count.
# Lines of common options stand here for all, or under a unit or a capture for that one alone.

${planKeys.map(optionLine).join('\n')}
# earlier:                # results of another day to compare with
#   - last-month/bench.json

units:`;

const CLAIMS = `    claims:               # what the maker says; power, surge, capacity and efficiency are judged over all captures
${[...claimExamples, ...unitClaimExamples].map((example) => `    #  - ${example}`).join('\n')}`;

const ENERGY = `    # energy:             # a discharge until it shuts off, as meters counted it
    #   - { dcWh: 466, acWh: 410, ratedWh: 512 }`;

function optionLine({ key, example, note }: (typeof planKeys)[number]): string {
  const line = `${key}: ${example}`;
  return `# ${note === undefined ? line : `${line.padEnd(24)}# ${note}`}`;
}

/** What a capture shows when it is measured. */
export interface LookedInto {
  /** A step or a transfer is filed as one; absent: as the name says. */
  readonly role?: 'step' | 'transfer';
}

/** A record with a step or a transfer in it is no capture of a steady load; one that lost its output is filed by its name. */
export function lookedInto({ events, steps }: Pick<AssayResult, 'events' | 'steps'>): LookedInto {
  if (events.some(({ kind }) => kind === 'transfer')) return { role: 'transfer' };
  return steps.length > 0 ? { role: 'step' } : {};
}

/**
 * A plan to fill in, from the captures found in a folder.
 *
 * @param files - paths relative to the plan, with / between their parts, in order.
 * @param looked - what the captures themselves show, by path: it counts for more than a name.
 */
export function planText(
  files: readonly string[],
  looked: ReadonlyMap<string, LookedInto> = new Map(),
): string {
  const units = new Map<string, GuessedCapture[]>();
  for (const file of files) {
    const guess = { ...guessCapture(file), ...looked.get(file) };
    const same = units.get(guess.unit);
    if (same === undefined) units.set(guess.unit, [guess]);
    else same.push(guess);
  }
  return `${[HEAD, ...[...units].map(([name, captures]) => unitText(name, captures))].join('\n')}\n`;
}

function unitText(name: string, captures: readonly GuessedCapture[]): string {
  const of = (role: GuessedCapture['role']): readonly GuessedCapture[] =>
    captures.filter((capture) => capture.role === role);
  return [
    `  - name: ${scalar(name)}`,
    `    label: ${scalar(name)}`,
    CLAIMS,
    ...block('captures', byLoad(of('sweep')), ({ loadW }) => [
      loadW === null ? '# load: 300 W        # or: measured' : `load: ${loadW} W`,
    ]),
    ...block('steps', of('step'), ({ loadW }) => [
      '# from: 0 W',
      loadW === null ? '# to: 300 W' : `to: ${loadW} W`,
      '# resistive: true',
    ]),
    ...block('transfers', of('transfer'), () => ['# direction: mains to battery']),
    ENERGY,
    '',
  ].join('\n');
}

function byLoad(captures: readonly GuessedCapture[]): readonly GuessedCapture[] {
  const size = ({ loadW }: GuessedCapture): number => loadW ?? Number.POSITIVE_INFINITY;
  return [...captures].sort((a, b) => (size(a) < size(b) ? -1 : size(a) > size(b) ? 1 : 0));
}

function block(
  key: string,
  captures: readonly GuessedCapture[],
  lines: (capture: GuessedCapture) => readonly string[],
): readonly string[] {
  if (captures.length === 0) return [];
  return [
    `    ${key}:`,
    ...captures.flatMap((capture) => [
      `      - file: ${scalar(capture.file)}`,
      ...lines(capture).map((line) => `        ${line}`),
    ]),
  ];
}

/** Plain where YAML can't take it for anything but a text, else quoted as JSON, which YAML reads too. */
function scalar(text: string): string {
  return /^[A-Za-z][\w./-]*$/.test(text) && !/^(?:true|false|yes|no|on|off|null)$/i.test(text)
    ? text
    : JSON.stringify(text);
}

/** What a file's name says of a capture. */
interface GuessedCapture {
  readonly file: string;
  /** What is left of the name, or the folder's: captures of one unit share it. */
  readonly unit: string;
  readonly role: 'sweep' | 'step' | 'transfer';
  /** Null where the name says none. */
  readonly loadW: number | null;
}

const STEP = /(?:^|[^a-z])step(?![a-z])/i;
const TRANSFER = /(?:^|[^a-z])(?:transfer|ups|eps)(?![a-z])/i;

/**
 * A guess at unit, role and load from a path such as `red/300w.csv`, `a-red-1.2kw.csv` or `red/300w/ch1.csv`: a scope
 * that makes a folder of each save leaves the load to the folder's name.
 *
 * @param file - path with / between its parts; its first folders may name the unit, never the folder that they lie in.
 */
export function guessCapture(file: string): GuessedCapture {
  const parts = file.split('/');
  const name = (parts.at(-1) ?? '').replace(/\.[^.]*$/, '');
  const step = STEP.exec(name);
  const transfer = TRANSFER.exec(name);
  const named = loadInFileName(parts.at(-1) ?? '');
  const isOfFolder = named === null && parts.length > 1;
  const load = isOfFolder ? loadInFileName(`${parts.at(-2)}/`) : named;
  const marks = [...(isOfFolder ? [] : [load?.at]), step?.index, transfer?.index].filter(
    (at) => at !== undefined,
  );
  const lead = leadOf(name, marks);
  const ofFolder =
    isOfFolder && load !== null ? leadOf(parts.at(-2)!, [load.at]) || parts.at(-3) : parts.at(-2);
  return {
    file,
    unit: lead || ofFolder || 'unit',
    role: step !== null ? 'step' : transfer !== null ? 'transfer' : 'sweep',
    loadW: load?.watts ?? null,
  };
}

/** What stands before the first of the marks; empty where there are none. */
function leadOf(name: string, marks: readonly number[]): string {
  return marks.length === 0 ? '' : name.slice(0, Math.min(...marks)).replace(/[^\p{L}\p{N}]+$/u, '');
}
