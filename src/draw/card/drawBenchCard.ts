import { scaleLinear } from 'd3';
import type { BenchDocument, BenchUnit } from '../../bench/benchDocument.ts';
import { isInvented } from '../../words/answerSentence.ts';
import { benchClaimsSentence } from '../../words/bench/benchLines.ts';
import { benchSpoken } from '../../words/bench/benchSpoken.ts';
import { comparisonSentence, endPoint } from '../../words/bench/comparisonSentence.ts';
import { leadingLoss, overloadPhrase } from '../../words/bench/overloadWords.ts';
import { worstClaims } from '../../words/claimWords.ts';
import { decimalText, significantText, withUnit } from '../../words/numbers.ts';
import { figureText } from '../../words/quantities.ts';
import { capitalised, cleanTexts, shortText } from '../../words/text.ts';
import type { CardTheme } from '../evidence.ts';
import { extentOf } from '../panels/drawCurve.ts';
import { type Box, openSheet, page } from '../paper/page.ts';
import type { Inks } from '../paper/palette.ts';
import { cutText, type Panel, writeText } from '../paper/writeText.ts';
import { drawCardFigure } from './cardParts.ts';
import { cardBody, cardThemes, drawCardFoot, drawCardHead, drawCardMessage } from './drawCard.ts';
import type { CardFigure } from './storyFigures.ts';

/** The one message of a unit's card: the output lost, else the claim that fails, else what the voltage does. */
function unitMessage(unit: BenchUnit): string {
  const loss = leadingLoss(unit);
  if (loss !== null) return `${capitalised(overloadPhrase(loss))}.`;
  const [worst] = worstClaims(unit.claims);
  if (worst?.outcome === 'fail' || worst?.outcome === 'conditional fail')
    return benchClaimsSentence(unit.claims.filter(({ text }) => text === worst.text).slice(0, 1));
  const [spoken] = benchSpoken(unit);
  return capitalised(spoken.slice(spoken.indexOf(': ') + 2));
}

/**
 * Draws a unit's sweep as a card for a video: one message, the voltage over the loads, two or three figures.
 *
 * @param told - what is from a file or a plan in it is cleaned and escaped here.
 * @returns a detached element, 1920 × 1080, self-contained.
 */
export function drawUnitCard(document: Document, told: BenchUnit, theme: CardTheme): SVGSVGElement {
  const unit = cleanTexts(told);
  const inks = cardThemes[theme];
  const message = unitMessage(unit);
  const subject = [
    shortText(unit.label, 60),
    ...(unit.ratedW === null ? [] : [`rated ${withUnit(decimalText(unit.ratedW, 0), 'W')}`]),
  ].join(' · ');
  const { svg, panel } = openSheet(
    document,
    message,
    `${message} A card: ${subject}. Captures with SHA-256 ${unit.points.map(({ sha256 }) => sha256).join(', ')}. A measurement, not a certificate.`,
    { widthPx: 1920, paper: inks.paper },
  );
  drawCardHead(panel(), subject, isInvented(unit), inks);
  drawCardMessage(panel(), message, null, inks);
  const figures = unitFigures(unit);
  const width = (figures.length === 0 ? page.right : cardBody.figuresX - 60) - page.left;
  const height = cardBody.bottom - cardBody.top;
  drawLoads(panel(), unit, inks, { x: page.left, y: cardBody.top, width, height });
  figures.forEach((figure, i) => {
    const step = height / 3;
    drawCardFigure(panel(), figure, inks, {
      ...{ x: cardBody.figuresX, y: cardBody.top + i * step },
      ...{ width: page.right - cardBody.figuresX, height: step },
    });
  });
  drawCardFoot(panel(), `${unit.points.length} captures of one evening, not a certificate.`, '', inks);
  return svg;
}

function unitFigures(unit: BenchUnit): readonly CardFigure[] {
  const full = endPoint(unit, 'fullLoad');
  const { regulationPercent, noLoadW, fullLoadW } = unit.regulation;
  const watts = (loadW: number): string => withUnit(decimalText(loadW, 0), 'W');
  const all: readonly CardFigure[] = [
    // By its loads: the highest that was held need not be all that the unit is rated for.
    {
      name: `regulation, ${watts(noLoadW ?? 0)} to ${watts(fullLoadW ?? 0)}`,
      figure: regulationPercent,
      unit: '%',
    },
    ...(full === null || fullLoadW === null
      ? []
      : [{ name: `at ${watts(fullLoadW)}`, figure: full.rmsV, unit: 'V' }]),
    { name: 'output impedance', figure: unit.droop.outputImpedanceOhm, unit: 'Ω' },
  ];
  return all.filter(({ figure }) => figure.value !== null);
}

/** The voltage over the loads, as dots on a line; a cross where the output was lost. */
function drawLoads(panel: Panel, { points, overloads = [], nominal }: BenchUnit, inks: Inks, box: Box): void {
  const shown = points.flatMap(({ loadW, rmsV, lost }) =>
    loadW.value === null || rmsV.value === null || lost !== undefined
      ? []
      : [{ w: loadW.value, v: rmsV.value }],
  );
  const lost = overloads.flatMap(({ loadW, lost: isLost, seen }) =>
    isLost && loadW.value !== null ? [{ w: loadW.value, seen }] : [],
  );
  writeText(panel, 'voltage over the load', box.x, box.y + 18, { sizePx: 26, weight: 600, ink: inks.wave });
  if (shown.length + lost.length === 0) {
    writeText(panel, 'no capture at a known steady load', box.x, box.y + 90, { sizePx: 32, ink: inks.soft });
    return;
  }
  const [, most] = extentOf(
    Float64Array.from([0, ...shown, ...lost], (one) => (typeof one === 'number' ? one : one.w)),
  );
  const load = scaleLinear([0, most > 0 ? most : 1], [box.x + 60, box.x + box.width - 60]);
  const nominalV = nominal?.voltageV;
  const volts = [
    ...shown.map(({ v }) => v),
    ...(nominalV === undefined ? [] : [0.9 * nominalV, 1.1 * nominalV]),
  ];
  const [low, high] = extentOf(Float64Array.from(volts.length === 0 ? [0, 1] : volts));
  const bottom = box.y + box.height - 50;
  const value = scaleLinear([low, high > low ? high : low + 1], [bottom - 24, box.y + 80]);
  const path = (d: string, ink: string, widthPx: number): void => {
    panel.append('path').attr('d', d).attr('fill', 'none').attr('stroke', ink).attr('stroke-width', widthPx);
  };
  path(`M${box.x} ${bottom}h${box.width}`, inks.line, 2);
  if (nominalV !== undefined) {
    const y = value(nominalV);
    path(`M${box.x} ${y.toFixed(1)}h${box.width}`, inks.ideal, 6);
    const text = `nominal ${withUnit(significantText(nominalV, 4), 'V')}`;
    writeText(panel, text, box.x + box.width, box.y + 18, {
      sizePx: 26,
      weight: 600,
      ink: inks.idealText,
      anchor: 'end',
    });
  }
  if (shown.length > 1)
    path(
      `M${shown.map(({ w, v }) => `${load(w).toFixed(1)} ${value(v).toFixed(1)}`).join('L')}`,
      inks.wave,
      4,
    );
  const taken: number[] = [];
  const nameLoad = (w: number): void => {
    const x = load(w);
    if (taken.some((other) => Math.abs(other - x) < 110)) return;
    taken.push(x);
    writeText(panel, withUnit(significantText(w, 4), 'W'), x, bottom + 36, {
      sizePx: 26,
      ink: inks.soft,
      anchor: 'middle',
    });
  };
  for (const { w, seen } of lost) {
    const [x, y] = [load(w), bottom - 24];
    path(`M${x - 16} ${y - 16}l32 32m0 -32l-32 32`, inks.outside, 6);
    const anchor = x > box.x + 0.7 * box.width ? 'end' : 'start';
    writeText(panel, seen, x + (anchor === 'end' ? -28 : 28), y + 8, {
      sizePx: 26,
      weight: 600,
      ink: inks.outside,
      anchor,
    });
    nameLoad(w);
  }
  for (const { w, v } of shown) {
    panel
      .append('circle')
      .attr('cx', load(w).toFixed(1))
      .attr('cy', value(v).toFixed(1))
      .attr('r', 11)
      .attr('fill', inks.wave);
    nameLoad(w);
  }
  for (const one of [shown[0], shown.length > 1 ? shown.at(-1) : undefined]) {
    if (one === undefined) continue;
    const text = withUnit(decimalText(one.v, 1), 'V');
    writeText(panel, text, load(one.w), value(one.v) + (one === shown[0] ? -26 : 48), {
      sizePx: 30,
      weight: 600,
      ink: inks.ink,
      anchor: 'middle',
    });
  }
}

const mostUnits = 6;

/**
 * Draws units side by side as a card: one message, and a row a unit with how far its voltage moves with the load.
 *
 * @param told - what is from a file or a plan in it is cleaned and escaped here.
 * @returns a detached element, 1920 × 1080, self-contained.
 */
export function drawComparisonCard(document: Document, told: BenchDocument, theme: CardTheme): SVGSVGElement {
  const { units: all } = cleanTexts(told);
  const units = all.slice(0, mostUnits);
  const inks = cardThemes[theme];
  const message = comparisonSentence(units);
  const more = all.length > units.length ? `, ${all.length - units.length} more not shown` : '';
  const subject = `${units.length} units side by side${more}`;
  const { svg, panel } = openSheet(
    document,
    message,
    `${message} A card: ${subject}. A measurement, not a certificate.`,
    { widthPx: 1920, paper: inks.paper },
  );
  drawCardHead(panel(), subject, units.some(isInvented), inks);
  drawCardMessage(panel(), message, null, inks);
  drawUnitRows(panel(), units, inks);
  drawCardFoot(panel(), 'One evening’s captures, not a certificate.', '', inks);
  return svg;
}

function drawUnitRows(panel: Panel, units: readonly BenchUnit[], inks: Inks): void {
  const top = cardBody.top + 56;
  const step = Math.min(110, (cardBody.bottom - top) / Math.max(1, units.length));
  const barX = page.left + 620;
  const room = page.right - barX - 420;
  const sizes = units.map(({ regulation: { regulationPercent } }) => Math.abs(regulationPercent.value ?? 0));
  const bar = scaleLinear([0, Math.max(1, ...sizes)], [0, room]);
  const heading = 'how far the voltage moves from no load to full load';
  writeText(panel, heading, barX, cardBody.top + 18, { sizePx: 26, weight: 600, ink: inks.wave });
  units.forEach((unit, i) => {
    const y = top + (i + 0.5) * step;
    const name = cutText(unit.label, 590, 36, 600);
    writeText(panel, name, page.left, y + 12, { sizePx: 36, weight: 600, ink: inks.ink });
    const { regulationPercent } = unit.regulation;
    const loss = leadingLoss(unit);
    const length = bar(sizes[i]!);
    if (regulationPercent.value !== null) {
      panel
        .append('rect')
        .attr('x', barX)
        .attr('y', (y - 12).toFixed(1))
        .attr('width', Math.max(3, length).toFixed(1))
        .attr('height', 24)
        .attr('fill', inks.wave);
    }
    const moved = regulationPercent.value === null ? 'not measured' : figureText(regulationPercent, '%');
    const x = barX + (regulationPercent.value === null ? 0 : length + 18);
    const text = loss === null ? moved : `${moved}; ${loss.seen}`;
    const ink = loss === null ? inks.ink : inks.outside;
    writeText(panel, cutText(text, page.right - x, 30), x, y + 10, { sizePx: 30, ink });
  });
}
