import { html, significantText, withUnit } from '../../entry/sections.ts';

interface ShownHarmonic {
  readonly order: number;
  /** Of the fundamental. */
  readonly percent: number;
  readonly uncertaintyPercent?: number | null;
}

interface ShownLimits {
  readonly source: string;
  readonly provenance: 'public' | 'memory';
  readonly limitPercent: ReadonlyMap<number, number>;
}

interface HarmonicsView {
  readonly take: (
    harmonics: readonly ShownHarmonic[],
    limits: ShownLimits | null,
    frequencyHz: number | null,
  ) => void;
}

const HEIGHT = 260;
const margin = { left: 56, right: 8, top: 14, bottom: 44 } as const;
const candidateTicks = [100, 50, 20, 10, 5, 2, 1, 0.5, 0.2, 0.1] as const;

/**
 * Harmonics from the second up as bars on a square-root scale, each with its limit above it. One stop for the Tab key,
 * arrows go from bar to bar; the bar that is pointed at or has the focus is told in a sentence.
 */
export function harmonicsView(host: HTMLElement): HarmonicsView {
  host.innerHTML =
    html`<div class="harmonics-view"><svg role="group" aria-label="Harmonics as bars, by order; arrow keys go from bar to bar. The table further down holds the same."></svg></div>
<p class="harmonic-told" aria-live="polite"></p>`.text;
  const svg = host.querySelector('svg')!;
  const frame = host.querySelector<HTMLElement>('.harmonics-view')!;
  const told = host.querySelector<HTMLElement>('.harmonic-told')!;
  let shown: Parameters<HarmonicsView['take']> = [[], null, null];
  let stop = 0;

  const draw = (): void => {
    const [harmonics, limits, frequencyHz] = shown;
    const bars = harmonics.filter(({ order }) => order >= 2);
    const width = Math.max(240, Math.round(frame.clientWidth));
    const document = host.ownerDocument;
    if (bars.length === 0) {
      svg.replaceChildren();
      told.textContent = 'None: harmonics need a wave that repeats.';
      return;
    }
    const limitOf = (order: number): number => limits?.limitPercent.get(order) ?? 0;
    const top = Math.max(1, ...bars.map(({ order, percent }) => Math.max(percent, limitOf(order))));
    const plot = { width: width - margin.left - margin.right, height: HEIGHT - margin.top - margin.bottom };
    const bottom = margin.top + plot.height;
    const y = (percent: number): number => bottom - Math.sqrt(percent / top) * plot.height;
    const pitch = plot.width / bars.length;
    const parts: SVGElement[] = [];
    let lastY = Number.POSITIVE_INFINITY;
    for (const tick of [0, ...candidateTicks.toReversed()]) {
      if (tick > top || lastY - y(tick) < 18) continue;
      lastY = y(tick);
      parts.push(
        svgElement(document, 'path', { class: 'axis', d: `M${margin.left - 5} ${lastY.toFixed(1)}h5` }),
      );
      parts.push(
        svgElement(
          document,
          'text',
          { class: 'tick', x: margin.left - 9, y: (lastY + 5).toFixed(1), 'text-anchor': 'end' },
          String(tick),
        ),
      );
    }
    parts.push(svgElement(document, 'path', { class: 'axis', d: `M${margin.left} ${bottom}h${plot.width}` }));
    const note =
      limits === null
        ? ''
        : `; short lines: limit in ${limits.source}${limits.provenance === 'memory' ? ', from memory' : ''}`;
    for (const [i, { order, percent, uncertaintyPercent = null }] of bars.entries()) {
      const x = margin.left + pitch * (i + 0.5);
      const limit = limits?.limitPercent.get(order);
      const isOver = limit !== undefined && percent > limit;
      const group = svgElement(document, 'g', {
        class: isOver ? 'bar over' : 'bar',
        role: 'img',
        tabindex: i === stop ? 0 : -1,
        'aria-label': harmonicSentence(
          { order, percent, uncertaintyPercent },
          limit,
          limits?.source,
          frequencyHz,
        ),
      });
      const half = Math.min(9, 0.32 * pitch);
      group.append(
        svgElement(document, 'rect', {
          class: 'reach',
          x: (x - pitch / 2).toFixed(1),
          y: margin.top,
          width: pitch.toFixed(1),
          height: plot.height,
        }),
        svgElement(document, 'rect', {
          class: 'size',
          x: (x - half).toFixed(1),
          y: y(percent).toFixed(1),
          width: (2 * half).toFixed(1),
          height: Math.max(0.5, bottom - y(percent)).toFixed(1),
        }),
      );
      if (limit !== undefined) {
        group.append(
          svgElement(document, 'path', {
            class: 'limit',
            d: `M${(x - 0.42 * pitch).toFixed(1)} ${y(limit).toFixed(1)}h${(0.84 * pitch).toFixed(1)}`,
          }),
        );
      }
      if (isOver)
        group.append(
          svgElement(
            document,
            'text',
            { class: 'tick over', x: x.toFixed(1), y: (y(percent) - 4).toFixed(1), 'text-anchor': 'middle' },
            '!',
          ),
        );
      if (order === 2 || order % (pitch < 12 ? 10 : 5) === 0) {
        parts.push(
          svgElement(
            document,
            'text',
            { class: 'tick', x: x.toFixed(1), y: bottom + 18, 'text-anchor': 'middle' },
            String(order),
          ),
        );
      }
      parts.push(group);
    }
    parts.push(
      svgElement(
        document,
        'text',
        { class: 'tick', x: margin.left, y: bottom + 38 },
        `order; % of the fundamental${width < 560 ? '' : note}`,
      ),
    );
    svg.setAttribute('viewBox', `0 0 ${width} ${HEIGHT}`);
    svg.replaceChildren(...parts);
    told.textContent =
      width < 560 && note !== ''
        ? `${note.slice(2)}.`
        : 'Point at a bar, or go to it with Tab and the arrow keys, to read it.';
  };
  const groups = (): SVGGElement[] => [...svg.querySelectorAll<SVGGElement>('.bar')];
  const tell = (target: EventTarget | null): void => {
    const group = (target as Element | null)?.closest?.('.bar');
    const label = group?.getAttribute('aria-label');
    if (label != null) told.textContent = label;
  };
  svg.addEventListener('pointerover', (event) => tell(event.target));
  svg.addEventListener('focusin', (event) => tell(event.target));
  svg.addEventListener('keydown', (event) => {
    const all = groups();
    const at = all.indexOf(event.target as SVGGElement);
    const next = { ArrowRight: at + 1, ArrowLeft: at - 1, Home: 0, End: all.length - 1 }[event.key];
    const group = next === undefined ? undefined : all[next];
    if (at < 0 || group === undefined) return;
    event.preventDefault();
    all[at]?.setAttribute('tabindex', '-1');
    group.setAttribute('tabindex', '0');
    stop = next!;
    group.focus();
  });
  new ResizeObserver(draw).observe(frame);
  return {
    take: (...given) => {
      shown = given;
      stop = 0;
      draw();
    },
  };
}

function harmonicSentence(
  { order, percent, uncertaintyPercent = null }: ShownHarmonic,
  limit: number | undefined,
  source: string | undefined,
  frequencyHz: number | null,
): string {
  const at = frequencyHz === null ? '' : ` (${withUnit(significantText(order * frequencyHz, 4), 'Hz')})`;
  const doubt = uncertaintyPercent === null ? '' : ` ± ${significantText(uncertaintyPercent, 2)}`;
  const held =
    limit === undefined
      ? ''
      : `; limit ${withUnit(significantText(limit, 3), '%')} in ${source}: ${percent > limit ? 'outside' : 'inside'}`;
  return `Order ${order}${at}: ${significantText(percent, 3)}${doubt}\u00a0% of the fundamental${held}.`;
}

const SVG = 'http://www.w3.org/2000/svg';

/** An SVG element with attributes; text, where given, is text and nothing else. */
export function svgElement<Name extends keyof SVGElementTagNameMap>(
  document: Document,
  name: Name,
  attributes: Readonly<Record<string, string | number>>,
  text?: string,
): SVGElementTagNameMap[Name] {
  const element = document.createElementNS(SVG, name);
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, String(value));
  if (text !== undefined) element.textContent = text;
  return element;
}
