import type { Figure } from '../../base/figure.ts';
import { assayOf, type CaptureEvidence, type CardEvidence, type Evidence } from '../../draw/evidence.ts';
import { stepFigureRows } from '../../draw/step/stepFigureRows.ts';
import { stepSubject } from '../../draw/step/stepPicture.ts';
import { sweepRows } from '../../draw/sweep/sweepRows.ts';
import type { ClaimResult } from '../../judge/claims/claim.ts';
import type { WaveformKind } from '../../judge/waveform/kinds.ts';
import { answerSentence } from '../../words/answerSentence.ts';
import { benchSpoken } from '../../words/bench/benchSpoken.ts';
import { comparisonSentence } from '../../words/bench/comparisonSentence.ts';
import { claimsVerdict } from '../../words/claimWords.ts';
import { compareSentence } from '../../words/compareLines.ts';
import { headlineFigures, mainFigures } from '../../words/figureRows.ts';
import { loadText } from '../../words/loadPhrase.ts';
import { figureText } from '../../words/quantities.ts';
import { isGrave, rankNotices } from '../../words/rankNotices.ts';
import { storyWords } from '../../words/storyWords.ts';
import { cleanTexts, fileName } from '../../words/text.ts';

/** What a gallery says of one sheet. Texts are cleaned, not escaped. */
export interface GalleryEntry {
  readonly picture: Evidence['picture'];
  /** What was measured, as a person calls it. */
  readonly title: string;
  /** The load as told, or how many captures. */
  readonly subject: string;
  readonly answer: string;
  /** What may make every figure of it wrong. */
  readonly doubts: readonly string[];
  readonly kinds: readonly WaveformKind[];
  /** Which part of the record its kind and figures describe, "before the loss"; empty where it is all of it. */
  readonly stretch: string;
  /** How the claims stand together; null: there is none. */
  readonly outcome: ClaimResult['outcome'] | null;
  readonly claimCount: number;
  readonly figures: readonly (readonly [name: string, value: string])[];
  /** By name what sheets are put in order by; null: it has none. */
  readonly order: Readonly<Record<OrderKey, number | null>>;
}

/** What the sheets of a gallery can be put in order by, beside their names. */
type OrderKey = 'load' | 'rms' | 'frequency' | 'crest' | 'thd';

/** The main things that a sheet says, read from what it carries. */
export function galleryEntry(evidence: Evidence): GalleryEntry {
  const clean = cleanTexts(evidence);
  switch (clean.picture) {
    case 'wave':
    case 'changes':
    case 'card':
      return ofCapture(clean);
    case 'sweep': {
      const { result } = clean;
      const { regulation, droop, points, claims } = result;
      return {
        ...{ picture: 'sweep', title: result.label, subject: countText(points.length, 'capture') },
        answer: benchSpoken(result)[0],
        kinds: [...new Set(points.map(({ kind }) => kind))],
        ...{ stretch: '', doubts: [] },
        ...verdict(claims),
        figures: [
          ['Regulation', figureText(regulation.regulationPercent, '%')],
          ['Output impedance', figureText(droop.outputImpedanceOhm, 'Ω')],
          ...sweepRows(result).slice(0, 2),
        ],
        order: noOrder,
      };
    }
    case 'overlay': {
      const { result, sides } = clean;
      const named = ({ label, file }: { readonly label?: string; readonly file: string }): string =>
        label ?? fileName(file);
      return {
        ...{ picture: 'overlay', title: `${named(result.a)} and ${named(result.b)}`, subject: 'compared' },
        answer: compareSentence(result),
        kinds: [...new Set(sides.map((side) => side.result.waveform.kind))],
        ...{ stretch: '', doubts: [] },
        ...verdict([]),
        figures: [],
        order: noOrder,
      };
    }
    case 'comparison': {
      const { units } = clean.result;
      return {
        ...{ picture: 'comparison', title: 'Units side by side', subject: countText(units.length, 'unit') },
        answer: comparisonSentence(units),
        kinds: [...new Set(units.flatMap(({ points }) => points.map(({ kind }) => kind)))],
        ...{ stretch: '', doubts: [] },
        ...verdict(units.flatMap(({ claims }) => claims)),
        figures: [],
        order: noOrder,
      };
    }
  }
}

const noOrder = { load: null, rms: null, frequency: null, crest: null, thd: null } as const;

function ofCapture(evidence: CaptureEvidence | CardEvidence): GalleryEntry {
  const { result, picture } = evidence;
  const figures = mainFigures(result);
  const { dynamics } = assayOf(evidence);
  const changes = picture === 'changes' ? dynamics : null;
  return {
    picture,
    title: result.label ?? fileName(result.file),
    subject: result.loadSeen === undefined ? '' : loadText(result.loadSeen),
    answer: answerSentence(result),
    kinds: [result.waveform.kind],
    stretch: storyWords(result)?.stretch ?? '',
    doubts: rankNotices(result.notices.filter(isGrave)).map(({ message }) => message),
    ...verdict(result.claims),
    figures:
      changes !== null
        ? stepFigureRows(stepSubject(result, changes), changes).slice(0, 4)
        : headlineFigures(result).map(([name, figure, unit]) => [name, figureText(figure, unit)]),
    order: {
      load: result.loadSeen?.watts ?? null,
      rms: valueIn(figures?.rms),
      frequency: valueIn(figures?.frequencyHz),
      crest: valueIn(figures?.crestFactor),
      thd: valueIn(figures?.thdPercent),
    },
  };
}

function verdict(claims: readonly ClaimResult[]): Pick<GalleryEntry, 'outcome' | 'claimCount'> {
  return { outcome: claimsVerdict(claims)?.outcome ?? null, claimCount: claims.length };
}

function valueIn(figure: Figure | undefined): number | null {
  return figure?.value ?? null;
}

function countText(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? '' : 's'}`;
}
