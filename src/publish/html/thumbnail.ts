import { extent, scaleLinear } from 'd3';
import { columnExtremes } from '../../draw/columnExtremes.ts';
import { assayOf, type Evidence, type OneCapture, type SweepEvidence } from '../../draw/evidence.ts';
import { tracePath } from '../../draw/panels/drawCurve.ts';
import { html, type Markup } from './html.ts';

const width = 224;
const height = 96;
const margin = 4;

/**
 * A small picture of what a sheet shows, without numbers: the wave over its ideal, the envelope of a record that
 * changes, the voltage over the loads of a sweep. Inks come from the page's style.
 */
export function thumbnail(evidence: Evidence): Markup {
  const drawing = drawingOf(evidence);
  return html`<svg class="thumb" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" aria-hidden="true" focusable="false">${drawing}</svg>`;
}

function drawingOf(evidence: Evidence): Markup | null {
  switch (evidence.picture) {
    case 'wave':
    case 'card':
      return wave(evidence);
    case 'changes':
      return envelope(evidence);
    case 'overlay':
      return html`${evidence.sides.map(wave)}`;
    case 'sweep':
      return sweep(evidence);
    case 'comparison': {
      const units = evidence.result.units;
      return html`${units.map((unit, i) => regulationBar(unit.regulation.regulationPercent.value, i, units))}`;
    }
  }
}

function wave(evidence: OneCapture): Markup {
  const { trace, result } = assayOf(evidence);
  const isPeriodic = (result.voltage ?? result.current)?.frequencyHz.value != null;
  const value = scaleLinear(
    extentOf([...trace.wave, ...(isPeriodic ? trace.ideal : [])]),
    ends(height, true),
  );
  const time = scaleLinear([trace.timeS[0] ?? 0, trace.timeS.at(-1) ?? 1], ends(width));
  const path = (samples: Float64Array): string => {
    // A column for two pixels: a page may hold hundreds of these.
    const kept = columnExtremes(trace.timeS, [samples], width / 2);
    return tracePath(
      Float64Array.from(kept, (i) => time(trace.timeS[i]!)),
      Float64Array.from(kept, (i) => value(samples[i]!)),
    );
  };
  return html`<path class="axis" d="M0 ${value(0).toFixed(1)}H${width}"/>${
    isPeriodic && html`<path class="ideal" d="${path(trace.ideal)}"/>`
  }<path class="wave" d="${path(trace.wave)}"/>`;
}

function envelope(evidence: OneCapture): Markup | null {
  const { dynamics, result } = assayOf(evidence);
  if (dynamics === null) return null;
  const { timeS, rmsHalfCycle } = dynamics;
  const nominalV = result.nominal?.voltageV;
  const value = scaleLinear(
    extentOf([...rmsHalfCycle, ...(nominalV === undefined ? [] : [nominalV])]),
    ends(height, true),
  );
  const time = scaleLinear([timeS[0] ?? 0, timeS.at(-1) ?? 1], ends(width));
  const path = tracePath(
    timeS.map((t) => time(t)),
    rmsHalfCycle.map((v) => value(v)),
  );
  return html`${
    nominalV !== undefined && html`<path class="ideal" d="M0 ${value(nominalV).toFixed(1)}H${width}"/>`
  }<path class="wave" d="${path}"/>`;
}

function sweep({ result }: SweepEvidence): Markup {
  const points = result.points.flatMap(({ loadW, rmsV, lost }) =>
    loadW.value === null || rmsV.value === null
      ? []
      : [{ x: loadW.value, y: rmsV.value, isLost: lost !== undefined }],
  );
  const load = scaleLinear(extentOf([0, ...points.map(({ x }) => x)]), ends(width, false, 12));
  const nominalV = result.nominal?.voltageV;
  const voltages = [...points.map(({ y }) => y), ...(nominalV === undefined ? [] : [nominalV])];
  const value = scaleLinear(extentOf(voltages), ends(height, true, 16));
  const placed = points.map(({ x, y, isLost }) => ({
    x: load(x).toFixed(1),
    y: value(y).toFixed(1),
    isLost,
  }));
  const dots = placed.filter(({ isLost }) => !isLost);
  // As on the sheet: a cross beside the line where the output was lost.
  const crosses = placed.filter(({ isLost }) => isLost);
  return html`${
    nominalV !== undefined && html`<path class="ideal" d="M0 ${value(nominalV).toFixed(1)}H${width}"/>`
  }${dots.length > 1 && html`<path class="wave" d="M${dots.map(({ x, y }) => `${x} ${y}`).join('L')}"/>`}${dots.map(
    ({ x, y }) => html`<circle class="dot" cx="${x}" cy="${y}" r="4"/>`,
  )}${crosses.map(({ x, y }) => html`<path class="lost" d="M${x} ${y}m-5-5l10 10m-10 0l10-10"/>`)}`;
}

/** How far a unit's voltage moves, as a dot on its own line, all on one scale. */
function regulationBar(
  percent: number | null,
  i: number,
  units: readonly {
    readonly regulation: { readonly regulationPercent: { readonly value: number | null } };
  }[],
): Markup {
  const y = (((i + 0.5) * height) / units.length).toFixed(1);
  const most = Math.max(
    1,
    ...units.map(({ regulation }) => Math.abs(regulation.regulationPercent.value ?? 0)),
  );
  const x = scaleLinear([0, most], [12, width - 12]);
  return html`<path class="axis" d="M0 ${y}H${width}"/>${
    percent !== null &&
    html`<path class="wave" d="M${x(0)} ${y}H${x(Math.abs(percent)).toFixed(1)}"/><circle class="dot" cx="${x(Math.abs(percent)).toFixed(1)}" cy="${y}" r="4"/>`
  }`;
}

/** Lowest and highest; a span that is none is opened, so that a level line stands in the middle. */
function extentOf(values: readonly number[]): [number, number] {
  const [low = 0, high = 1] = extent(values.filter(Number.isFinite));
  return low === high ? [low - 1, high + 1] : [low, high];
}

function ends(size: number, upwards = false, room = margin): [number, number] {
  return upwards ? [size - room, room] : [room, size - room];
}
