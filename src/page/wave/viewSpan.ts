/** A stretch of time. */
export type Span = readonly [fromS: number, toS: number];

/** What a view keeps to: the record, and the shortest stretch worth showing. */
export interface SpanLimits {
  readonly record: Span;
  readonly shortestS: number;
}

/** The stretch moved and, where it is too long or too short, resized to keep to the limits. */
export function keptSpan([from, to]: Span, { record: [start, end], shortestS }: SpanLimits): Span {
  const length = Math.min(Math.max(to - from, shortestS), end - start);
  const middle = (from + to) / 2;
  const kept = Math.min(Math.max(middle - length / 2, start), end - length);
  return [kept, kept + length];
}

/** Shorter (factor below 1) or longer, the time `aboutS` staying where it is in the picture. */
export function zoomedSpan([from, to]: Span, factor: number, aboutS: number, limits: SpanLimits): Span {
  const length = Math.min(
    Math.max((to - from) * factor, limits.shortestS),
    limits.record[1] - limits.record[0],
  );
  const share = (aboutS - from) / (to - from);
  return keptSpan([aboutS - share * length, aboutS + (1 - share) * length], limits);
}

/** Earlier (negative) or later by a share of its length. */
export function movedSpan([from, to]: Span, share: number, limits: SpanLimits): Span {
  const by = share * (to - from);
  return keptSpan([from + by, to + by], limits);
}
