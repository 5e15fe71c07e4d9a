/** A rectangle that something on the sheet takes up, px, y downwards. */
export interface Room {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** True where two rectangles share more than a line. */
export function overlaps(a: Room, b: Room): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}
