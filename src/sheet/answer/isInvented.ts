import type { Notice } from '../../base/notice.ts';

/** True where a capture says itself that its data are invented, in its own text: never for what anything is called. */
export function isInvented({ notices }: { readonly notices: readonly Notice[] }): boolean {
  return notices.some(({ code }) => code === 'data.invented');
}
