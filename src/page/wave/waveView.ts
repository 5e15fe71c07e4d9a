import { html, type Markup, significantText, withUnit } from '../../entry/sections.ts';
import { drawWave, type Mark, markSentence, plotOf } from './drawWave.ts';
import {
  keptSpan,
  movedSpan,
  nearestSample,
  rangeOf,
  type Span,
  type SpanLimits,
  timeText,
  timeUnit,
  type WaveColumns,
  zoomedSpan,
} from './waveColumns.ts';

/** A channel of a capture, to be looked at. */
interface WaveSource {
  readonly channel: string;
  readonly unit: string;
  /** The record. */
  readonly record: Span;
  readonly intervalS: number;
  /** Shown at first. */
  readonly twoCycles: Span;
  /** Of the fundamental; null where nothing repeats. */
  readonly periodS: number | null;
  /** The sine of the same RMS and phase; null where there is none. */
  readonly ideal: ((timeS: number) => number) | null;
  /** May be answered late and out of order; null: not any more. */
  readonly columns: (fromS: number, toS: number, count: number) => Promise<WaveColumns | null>;
}

interface WaveView {
  /** Shows another channel, or the same measured anew: then the stretch stays. */
  readonly take: (source: WaveSource, keepsSpan: boolean) => void;
  readonly goTo: (timeS: number) => void;
}

/** More cycles than this hide the ideal sine behind the wave. */
const IDEAL_CYCLES = 12;
const SHORTEST_SAMPLES = 8;
const CLOSER = 0.5;
/** So many for the three samples about a mark that each stands alone. */
const MARK_COLUMNS = 8;

/** What a key of the keyboard moves. */
const keys: Readonly<Record<string, string>> = {
  ...{ ArrowLeft: 'earlier', ArrowRight: 'later', Home: 'cycles', End: 'record' },
  ...{ '+': 'closer', '=': 'closer', '-': 'wider', '−': 'wider' },
};

/** A wave that can be moved along, looked at more closely, and marked at two places; by pointer or by keys. */
export function waveView(host: HTMLElement): WaveView {
  host.innerHTML = waveMarkup.text;
  const frame = host.querySelector<HTMLElement>('.wave-view')!;
  const svg = host.querySelector('svg')!;
  const between = host.querySelector<HTMLElement>('.wave-between')!;
  const fields = [
    host.querySelector<HTMLInputElement>('#mark-a')!,
    host.querySelector<HTMLInputElement>('#mark-b')!,
  ];

  let source: WaveSource | null = null;
  let limits: SpanLimits = { record: [0, 1], shortestS: 0 };
  let span: Span = [0, 1];
  let columns: WaveColumns = { timeS: new Float64Array(), low: new Float64Array(), high: new Float64Array() };
  let range: readonly [number, number] = [-1, 1];
  let marks: [Mark | null, Mark | null] = [null, null];
  let asked = 0;

  const size = (): { width: number; height: number } => {
    const width = Math.max(240, Math.round(frame.clientWidth));
    return { width, height: width < 520 ? 260 : 340 };
  };
  const draw = (): void => {
    if (source === null) return;
    const placed = marks.filter((mark) => mark !== null);
    const { periodS, ideal, unit, channel } = source;
    const isNear = periodS !== null && span[1] - span[0] <= IDEAL_CYCLES * periodS;
    drawWave(svg, size(), { span, columns, range, unit, ideal: isNear ? ideal : null, marks: placed });
    const time = timeUnit(span[1] - span[0]);
    for (const label of host.querySelectorAll('.mark-unit')) label.textContent = time.name;
    const sentence = markSentence(placed, unit, time);
    if (between.textContent !== sentence) between.textContent = sentence;
    svg.setAttribute('aria-label', waveSentence(channel, unit, span, columns));
  };
  const ask = async (): Promise<void> => {
    if (source === null) return;
    const own = ++asked;
    const of = source;
    const found = await of.columns(span[0], span[1], plotOf(size().width, 0).width);
    // Only the newest request counts.
    if (own !== asked || of !== source || found === null) return;
    columns = found;
    draw();
  };
  const show = (next: Span): void => {
    span = keptSpan(next, limits);
    for (const [i, field] of fields.entries()) {
      const mark = marks[i]?.timeS;
      const time = timeUnit(span[1] - span[0]);
      if (field !== host.ownerDocument.activeElement) {
        field.value = mark === undefined ? '' : (mark / time.seconds).toFixed(time.decimals);
      }
    }
    draw();
    void ask();
  };
  const timeAt = (clientX: number): number => {
    const { left } = svg.getBoundingClientRect();
    const plot = plotOf(size().width, 0);
    return span[0] + ((clientX - left - plot.left) / plot.width) * (span[1] - span[0]);
  };
  /** A column of the picture may hold many samples: the value at a mark is asked for by itself. */
  const place = (which: number, timeS: number | null): void => {
    const placed = timeS === null ? null : { timeS, value: null };
    marks[which] = placed;
    show(span);
    if (placed === null || source === null) return;
    const { intervalS, columns: columnsOf } = source;
    void columnsOf(placed.timeS - intervalS, placed.timeS + intervalS, MARK_COLUMNS).then((near) => {
      if (marks[which] !== placed || near === null) return;
      marks[which] = { ...placed, value: nearestSample(near, placed.timeS) };
      draw();
    });
  };
  const mark = (timeS: number): void => {
    const kept = Math.min(Math.max(timeS, limits.record[0]), limits.record[1]);
    const [a, b] = marks;
    // The first free one, else the nearer.
    const which =
      a === null ? 0 : b === null ? 1 : Math.abs(a.timeS - kept) <= Math.abs(b.timeS - kept) ? 0 : 1;
    place(which, kept);
  };
  const middle = (): number => (span[0] + span[1]) / 2;
  const moves: Readonly<Record<string, () => void>> = {
    earlier: () => show(movedSpan(span, -0.25, limits)),
    later: () => show(movedSpan(span, 0.25, limits)),
    closer: () => show(zoomedSpan(span, CLOSER, middle(), limits)),
    wider: () => show(zoomedSpan(span, 1 / CLOSER, middle(), limits)),
    cycles: () => source && show(source.twoCycles),
    record: () => show(limits.record),
    clear: () => {
      marks = [null, null];
      show(span);
    },
  };
  frame.addEventListener('keydown', (event) => {
    const move = keys[event.key];
    if (move === undefined || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    moves[move]?.();
  });
  host.addEventListener('click', (event) => {
    const move = (event.target as HTMLElement).closest('button')?.dataset.move;
    if (move !== undefined) moves[move]?.();
  });
  for (const [i, field] of fields.entries()) {
    field.addEventListener('change', () => {
      const value =
        Number(field.value.replace('−', '-').replace(',', '.')) * timeUnit(span[1] - span[0]).seconds;
      place(i, field.value.trim() === '' || !Number.isFinite(value) ? null : value);
    });
  }
  frame.addEventListener(
    'wheel',
    (event) => {
      // A page that scrolls by goes on scrolling.
      if (!event.ctrlKey && host.ownerDocument.activeElement !== frame) return;
      event.preventDefault();
      show(zoomedSpan(span, 1.0015 ** event.deltaY, timeAt(event.clientX), limits));
    },
    { passive: false },
  );
  followPointers(frame, {
    drag: (fromX, toX) => {
      const by = timeAt(fromX) - timeAt(toX);
      show(keptSpan([span[0] + by, span[1] + by], limits));
    },
    pinch: (factor, aboutX) => show(zoomedSpan(span, factor, timeAt(aboutX), limits)),
    click: (x) => mark(timeAt(x)),
  });
  new ResizeObserver(() => show(span)).observe(frame);

  return {
    take: (next, keepsSpan) => {
      source = next;
      limits = { record: next.record, shortestS: SHORTEST_SAMPLES * next.intervalS };
      if (!keepsSpan) {
        marks = [null, null];
        span = keptSpan(next.twoCycles, limits);
      }
      range = [-1, 1];
      const of = next;
      void of.columns(limits.record[0], limits.record[1], 400).then((whole) => {
        if (of !== source || whole === null) return;
        range = rangeOf(whole);
        draw();
      });
      show(span);
      // Measured anew, the same samples may have another scale.
      for (const [i, mark] of marks.entries()) if (mark !== null) place(i, mark.timeS);
    },
    goTo: (timeS) => {
      const length = span[1] - span[0];
      show([timeS - length / 2, timeS + length / 2]);
      frame.focus({ preventScroll: true });
    },
  };
}

/** The picture of a wave with all that moves and marks it. */
const waveMarkup: Markup = html`<div class="wave-view" tabindex="0" role="group" aria-label="The wave, to look closer and to mark" aria-describedby="wave-keys"><svg role="img"></svg></div>
<div class="actions wave-actions">
<button type="button" data-move="earlier">Earlier</button><button type="button" data-move="later">Later</button>
<button type="button" data-move="closer">Closer</button><button type="button" data-move="wider">Wider</button>
<button type="button" data-move="cycles">Two cycles</button><button type="button" data-move="record">Whole record</button>
</div>
<div class="fields wave-marks">
<div class="field"><label for="mark-a">First mark, <span class="mark-unit"></span></label><input id="mark-a" type="text" inputmode="decimal"></div>
<div class="field"><label for="mark-b">Second mark, <span class="mark-unit"></span></label><input id="mark-b" type="text" inputmode="decimal"></div>
<button type="button" data-move="clear">No marks</button>
</div>
<p class="wave-between" aria-live="polite"></p>
<p id="wave-keys" class="soft"><small>Keys while the picture has the focus: arrows move, + and − look closer and wider, Home shows two cycles, End the whole record. The wheel does too then; drag to move, click to mark.</small></p>
`;

/** What a picture of a wave shows, for who hears it. */
function waveSentence(channel: string, unit: string, [from, to]: Span, { low, high }: WaveColumns): string {
  const present = (values: Float64Array): Float64Array => values.filter((value) => !Number.isNaN(value));
  const text = (value: number): string => withUnit(significantText(value, 4), unit);
  const [bottom, top] = [Math.min(...present(low)), Math.max(...present(high))];
  const extent = bottom <= top ? `from ${text(bottom)} to ${text(top)}` : 'no value';
  const time = timeUnit(to - from);
  return `The wave of channel ${channel} from ${timeText(from, time)} to ${timeText(to, time)}: ${extent}.`;
}

/** A pointer that moved less clicked. */
const CLICK_PX = 5;

/** What pointers do to a picture. Places are in px, as the pointer's event has them. */
interface PointerActions {
  readonly drag: (fromX: number, toX: number) => void;
  /** @param factor - how much longer the stretch gets. */
  readonly pinch: (factor: number, aboutX: number) => void;
  readonly click: (x: number) => void;
}

/** Follows the pointers over a picture: one drags or clicks, two pinch. */
function followPointers(frame: HTMLElement, { drag, pinch, click }: PointerActions): void {
  const down = new Map<number, number>();
  let moved = 0;
  frame.addEventListener('pointerdown', (event) => {
    if (event.button !== 0) return;
    frame.setPointerCapture(event.pointerId);
    down.set(event.pointerId, event.clientX);
    if (down.size === 1) moved = 0;
  });
  frame.addEventListener('pointermove', (event) => {
    const before = down.get(event.pointerId);
    if (before === undefined) return;
    const other = [...down].find(([id]) => id !== event.pointerId)?.[1];
    moved += Math.abs(event.clientX - before);
    if (other !== undefined) {
      const [was, is] = [Math.abs(before - other), Math.abs(event.clientX - other)];
      if (was > 10 && is > 10) pinch(was / is, (event.clientX + other) / 2);
    } else if (moved > CLICK_PX) drag(before, event.clientX);
    down.set(event.pointerId, event.clientX);
  });
  frame.addEventListener('pointerup', (event) => {
    if (down.delete(event.pointerId) && down.size === 0 && moved <= CLICK_PX) click(event.clientX);
  });
  frame.addEventListener('pointercancel', (event) => down.delete(event.pointerId));
}
