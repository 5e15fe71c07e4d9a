/** A pointer that moved less clicked. */
const CLICK_PX = 5;

/** What pointers do to a picture. Places are in px, as the pointer's event has them. */
export interface PointerActions {
  readonly drag: (fromX: number, toX: number) => void;
  /** @param factor - how much longer the stretch gets. */
  readonly pinch: (factor: number, aboutX: number) => void;
  readonly click: (x: number) => void;
}

/** Follows the pointers over a picture: one drags or clicks, two pinch. */
export function followPointers(frame: HTMLElement, { drag, pinch, click }: PointerActions): void {
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
