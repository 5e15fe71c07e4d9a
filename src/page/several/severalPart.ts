import { knownOf } from '../desk/sitting.ts';
import { overlayPart } from './overlayPart.ts';
import type { SeveralActions, SeveralView } from './severalView.ts';
import { sweepPart } from './sweepPart.ts';

/**
 * The part of the page about captures together. It follows what is told of them; while one is still measured it
 * stays as it was.
 */
export function severalPart(host: HTMLElement, actions: SeveralActions): SeveralView {
  const views = [
    sweepPart(host.querySelector('#sweep')!, actions),
    overlayPart(host.querySelector('#overlay')!, actions),
  ];
  return {
    follow: (entries, looked) => {
      const isBusy = entries.some(({ state }) => state.at === 'work');
      const measured = entries.filter((entry) => entry.state.at !== 'failed' && knownOf(entry) !== null);
      host.hidden = measured.length < 2;
      host.setAttribute('aria-busy', String(isBusy));
      actions.turns.hold(isBusy);
      if (!isBusy || measured.length < 2) for (const view of views) view.follow(measured, looked);
    },
  };
}
