// On a page that shows lines, every move is a link that works by itself. Here a click on one shows its
// position on the board at hand instead of fetching the page anew.

import { parseSquare, type Square } from '#lib/rules/position.ts';

/** Where the last move went; null at the start. */
export type Arrow = { readonly from: Square; readonly to: Square } | null;

/** The arrow of a move, UCI; null where the text names none. */
export function arrowOf(uci: string): Arrow {
  const [from, to] = [parseSquare(uci.slice(0, 2)), parseSquare(uci.slice(2, 4))];
  return from === null || to === null ? null : { from, to };
}

/** A step of a line as its link carries it. */
export interface LineStep {
  readonly fen: string;
  readonly arrow: Arrow;
  readonly text: string;
}

/** Listens to the links `a[data-fen]` of a page and reports the step that was asked for. */
export function followLines(page: Document, show: (step: LineStep) => void): void {
  page.addEventListener('click', (event) => {
    if (event.defaultPrevented || event.button !== 0 || event.ctrlKey || event.metaKey || event.shiftKey)
      return;
    const link = event.target instanceof Element ? event.target.closest('a[data-fen]') : null;
    if (!(link instanceof HTMLAnchorElement)) return;
    event.preventDefault();
    for (const other of page.querySelectorAll('a[data-fen][aria-current]'))
      other.removeAttribute('aria-current');
    link.setAttribute('aria-current', 'true');
    history.replaceState(null, '', link.href);
    show({
      fen: link.dataset.fen ?? '',
      arrow: arrowOf(link.dataset.uci ?? ''),
      text: link.textContent ?? '',
    });
    const board = page.querySelector('tailpiece-board');
    const box = board?.getBoundingClientRect();
    if (board && box && (box.top < 0 || box.top > innerHeight / 2)) board.scrollIntoView({ block: 'start' });
  });
}
