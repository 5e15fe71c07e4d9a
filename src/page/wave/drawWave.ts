import { axisTicks, significantText, withUnit } from '../../entry/sections.ts';
import { svgElement } from '../harmonics/harmonicsView.ts';
import { type Span, type TimeUnit, timeText, timeUnit, type WaveColumns } from './waveColumns.ts';

/** What a picture of a wave shows. */
interface WavePicture {
  readonly span: Span;
  readonly columns: WaveColumns;
  /** Lowest and highest value of the axis. */
  readonly range: readonly [low: number, high: number];
  readonly unit: string;
  readonly ideal: ((timeS: number) => number) | null;
  readonly marks: readonly Mark[];
}

/** Where the wave stands within the picture, in px. */
interface Plot {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

export function plotOf(widthPx: number, heightPx: number): Plot {
  return { left: 56, top: 10, width: Math.max(40, widthPx - 64), height: heightPx - 50 };
}

/** Draws a stretch of a wave into an SVG element of the given size, in place of what it held. */
export function drawWave(
  svg: SVGSVGElement,
  { width, height }: { width: number; height: number },
  picture: WavePicture,
): void {
  const document = svg.ownerDocument;
  const {
    span: [from, to],
    columns,
    range: [low, high],
    unit,
    ideal,
    marks,
  } = picture;
  const plot = plotOf(width, height);
  const x = (timeS: number): number => plot.left + ((timeS - from) / (to - from)) * plot.width;
  const y = (value: number): number => plot.top + ((high - value) / (high - low)) * plot.height;
  const parts: SVGElement[] = [];
  const add = (
    ...args: Parameters<typeof svgElement> extends [Document, ...infer Rest] ? Rest : never
  ): void => {
    parts.push(svgElement(document, ...args));
  };

  const values = axisTicks(low, high, 5);
  for (const value of values.values) {
    add('path', { class: 'grid', d: `M${plot.left} ${y(value).toFixed(1)}h${plot.width}` });
    add(
      'text',
      { class: 'tick', x: plot.left - 8, y: (y(value) + 5).toFixed(1), 'text-anchor': 'end' },
      value.toFixed(Math.max(0, values.decimals)).replace('-', '−'),
    );
  }
  const time = timeUnit(to - from);
  const times = axisTicks(from / time.seconds, to / time.seconds, Math.max(2, Math.floor(plot.width / 110)));
  const bottom = plot.top + plot.height;
  for (const value of times.values) {
    const at = x(value * time.seconds);
    add('path', { class: 'axis', d: `M${at.toFixed(1)} ${bottom}v5` });
    if (at < plot.left + plot.width - 12) {
      add(
        'text',
        { class: 'tick', x: at.toFixed(1), y: bottom + 21, 'text-anchor': 'middle' },
        value.toFixed(Math.max(0, times.decimals)).replace('-', '−'),
      );
    }
  }
  add('path', { class: 'axis', d: `M${plot.left} ${bottom}h${plot.width}` });
  add(
    'text',
    { class: 'tick', x: plot.left + plot.width, y: bottom + 38, 'text-anchor': 'end' },
    `time in ${time.name}, on the file’s own axis`,
  );
  add('text', { class: 'tick', x: 0, y: bottom + 38 }, `in ${unit}`);

  if (ideal !== null) {
    const points = Array.from({ length: 401 }, (_, i) => from + ((to - from) * i) / 400);
    add('path', {
      class: 'ideal',
      d: `M${points.map((t) => `${x(t).toFixed(1)} ${y(ideal(t)).toFixed(1)}`).join('L')}`,
    });
  }
  add('path', { class: 'wave', d: wavePath(columns, x, y) });
  for (const { timeS, value } of marks) {
    if (timeS < from || timeS > to) continue;
    add('path', { class: 'mark', d: `M${x(timeS).toFixed(1)} ${plot.top}v${plot.height}` });
    if (value !== null)
      add('circle', { class: 'mark', cx: x(timeS).toFixed(1), cy: y(value).toFixed(1), r: 4 });
    add('text', { class: 'tick', x: x(timeS).toFixed(1), y: plot.top + 12, dx: 5 }, timeText(timeS, time));
  }
  svg.setAttribute('viewBox', `0 0 ${width} ${height}`);
  svg.replaceChildren(...parts);
}

/** Through the lowest and highest of each column; broken where there is no value. */
function wavePath(
  { timeS, low, high }: WaveColumns,
  x: (t: number) => number,
  y: (v: number) => number,
): string {
  let path = '';
  let isOpen = false;
  for (let i = 0; i < timeS.length; i++) {
    const [l, h] = [low[i]!, high[i]!];
    if (Number.isNaN(l)) {
      isOpen = false;
      continue;
    }
    const at = x(timeS[i]!).toFixed(1);
    // The end nearer to where the line comes from goes first.
    const near = isOpen && Math.abs(high[i - 1]! - h) < Math.abs(low[i - 1]! - l) ? h : l;
    path += `${isOpen ? 'L' : 'M'}${at} ${y(near).toFixed(1)}`;
    if (l !== h) path += `V${y(near === l ? h : l).toFixed(1)}`;
    isOpen = true;
  }
  return path;
}

/** A place on the wave that a person marked. */
export interface Mark {
  readonly timeS: number;
  /** Null where the file holds none. */
  readonly value: number | null;
}

/** What lies between two marks, in a sentence; with one mark or none, what to do. */
export function markSentence(marks: readonly Mark[], unit: string, time: TimeUnit): string {
  const [a, b] = [...marks].sort((one, other) => one.timeS - other.timeS);
  if (a === undefined) return 'Click the wave at two places, or type their times, to read what lies between.';
  const place = ({ timeS, value }: Mark): string =>
    `${timeText(timeS, time)}${value === null ? '' : ` (${valueText(value, unit)})`}`;
  if (b === undefined) return `One mark at ${place(a)}; a second one is wanted.`;
  const apart = b.timeS - a.timeS;
  const turn = apart > 0 ? `, the time of one turn at ${Number((1 / apart).toPrecision(5))}\u00a0Hz` : '';
  const change =
    a.value === null || b.value === null
      ? ''
      : a.value === b.value
        ? ', and the same value'
        : `, and ${valueText(Math.abs(b.value - a.value), unit)} ${b.value > a.value ? 'higher' : 'lower'}`;
  return `From ${place(a)} to ${place(b)}: ${timeText(apart, time)}${turn}${change}.`;
}

function valueText(value: number, unit: string): string {
  return withUnit(significantText(value, 4).replace('-', '−'), unit);
}
