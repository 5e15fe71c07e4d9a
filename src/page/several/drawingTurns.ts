/** Draws one picture at a time, so that the page answers in between. */
export interface DrawingTurns {
  /** Draws when its turn comes, unless another picture is wanted at the same place by then. */
  readonly draw: (place: HTMLElement, work: () => void) => void;
  /** Nothing is wanted at a place any more. */
  readonly drop: (place: HTMLElement) => void;
  /** While held nothing is drawn. */
  readonly hold: (held: boolean) => void;
}

/** Opens the queue of pictures. */
export function drawingTurns(): DrawingTurns {
  const wanted = new Map<HTMLElement, () => void>();
  let isHeld = false;
  let isAsked = false;
  const next = (): void => {
    if (isAsked || isHeld || wanted.size === 0) return;
    isAsked = true;
    // After the frame that is due: what was typed or chosen shows before a picture is drawn.
    requestAnimationFrame(() => setTimeout(turn));
  };
  const turn = (): void => {
    isAsked = false;
    const [first] = wanted;
    if (isHeld || first === undefined) return;
    const [place, work] = first;
    wanted.delete(place);
    try {
      work();
    } finally {
      next();
    }
  };
  return {
    draw: (place, work) => {
      wanted.set(place, work);
      next();
    },
    drop: (place) => wanted.delete(place),
    hold: (held) => {
      isHeld = held;
      next();
    },
  };
}
