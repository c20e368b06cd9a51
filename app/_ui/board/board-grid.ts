// The labelled grid over the diagram: sixty-four cells, one tab stop, arrow keys, Enter; taps and drags
// end in the same calls. A press counts when it is let go, and can be called off with Escape.

import { type Square, squareName } from '#lib/rules/position.ts';

/** What the grid reports. */
export interface GridEvents {
  touch(square: Square): void;
  /** A drag began on a movable man; false calls it off. */
  lift(square: Square): boolean;
  drag(square: Square, byX: number, byY: number): void;
  /** A drag ended on a square, or off the board (null). */
  drop(from: Square, to: Square | null): void;
  escape(): void;
}

/** The grid as the board uses it. */
export interface BoardGrid {
  readonly root: HTMLElement;
  name(cellName: (square: Square) => string): void;
  mark(state: { chosen: Square | null; targets: readonly Square[]; movable: ReadonlySet<Square> }): void;
  turn(isFlipped: boolean): void;
  focus(square: Square): void;
}

const DRAG_FROM_PIXELS = 6;

/** Builds the grid; `label` names it for those who hear it. */
export function createGrid(label: string, events: GridEvents): BoardGrid {
  const root = division('board-grid', 'grid');
  root.setAttribute('aria-label', label);
  let current: Square = 0;
  let flipped = false;
  const cells: HTMLElement[] = [];
  for (let square = 0; square < 64; square += 1) {
    const cell = division('board-cell', 'gridcell');
    cell.tabIndex = square === current ? 0 : -1;
    cell.dataset.square = squareName(square);
    cells.push(cell);
  }

  function lay(): void {
    root.replaceChildren();
    for (let row = 0; row < 8; row += 1) {
      const line = division('board-row', 'row');
      for (let column = 0; column < 8; column += 1) {
        const cell = cells[squareAt(row, column, flipped)];
        if (cell) line.append(cell);
      }
      root.append(line);
    }
  }

  function moveFocus(square: Square): void {
    const from = cells[current];
    const to = cells[square];
    if (from) from.tabIndex = -1;
    current = square;
    if (to) to.tabIndex = 0;
    to?.focus({ preventScroll: true });
    to?.scrollIntoView({ block: 'nearest' });
  }

  root.addEventListener('keydown', (event) => {
    root.classList.remove('by-pointer');
    const square = event.target instanceof HTMLElement ? cells.indexOf(event.target) : -1;
    if (square < 0 || event.altKey || event.metaKey) return;
    if (event.key === 'Enter' || event.key === ' ') events.touch(square);
    else if (event.key === 'Escape') events.escape();
    else {
      const next = squareAfterKey(square, event.key, { isFlipped: flipped, isControl: event.ctrlKey });
      if (next === null) return;
      moveFocus(next);
    }
    event.preventDefault();
  });
  listenToPointer(root, cells, { ...events, focus: moveFocus });
  lay();

  return {
    root,
    name(cellName) {
      cells.forEach((cell, square) => {
        cell.setAttribute('aria-label', cellName(square));
      });
    },
    mark({ chosen, targets, movable }) {
      cells.forEach((cell, square) => {
        cell.classList.toggle('is-movable', movable.has(square));
        cell.classList.toggle('is-reachable', targets.includes(square));
        if (square === chosen) cell.setAttribute('aria-selected', 'true');
        else cell.removeAttribute('aria-selected');
      });
    },
    turn(isFlipped) {
      flipped = isFlipped;
      lay();
    },
    focus: moveFocus,
  };
}

function division(className: string, role: string): HTMLElement {
  const made = document.createElement('div');
  made.className = className;
  made.setAttribute('role', role);
  return made;
}

/** The square at a row (from the top) and column (from the left) of the board as it stands. */
export function squareAt(row: number, column: number, isFlipped: boolean): Square {
  return isFlipped ? row * 8 + (7 - column) : (7 - row) * 8 + column;
}

/** Where a key leads from a square, or null for keys that are none of ours; the edge stops. */
export function squareAfterKey(
  square: Square,
  key: string,
  { isFlipped, isControl }: { readonly isFlipped: boolean; readonly isControl: boolean },
): Square | null {
  const column = isFlipped ? 7 - (square & 7) : square & 7;
  const row = isFlipped ? square >> 3 : 7 - (square >> 3);
  switch (key) {
    case 'ArrowLeft':
      return squareAt(row, Math.max(0, column - 1), isFlipped);
    case 'ArrowRight':
      return squareAt(row, Math.min(7, column + 1), isFlipped);
    case 'ArrowUp':
      return squareAt(Math.max(0, row - 1), column, isFlipped);
    case 'ArrowDown':
      return squareAt(Math.min(7, row + 1), column, isFlipped);
    case 'Home':
      return squareAt(isControl ? 0 : row, 0, isFlipped);
    case 'End':
      return squareAt(isControl ? 7 : row, 7, isFlipped);
    default:
      return null;
  }
}

interface PointerEvents extends GridEvents {
  focus(square: Square): void;
}

function listenToPointer(root: HTMLElement, cells: readonly HTMLElement[], events: PointerEvents): void {
  let pressed: { square: Square; x: number; y: number; id: number; isDrag: boolean } | null = null;

  function cellAt(x: number, y: number): Square | null {
    const found = document.elementsFromPoint(x, y).find((one) => one.classList.contains('board-cell'));
    const square = found instanceof HTMLElement ? cells.indexOf(found) : -1;
    return square < 0 ? null : square;
  }

  function end(to: Square | null, isKept: boolean): void {
    const press = pressed;
    pressed = null;
    root.classList.remove('is-dragging');
    if (press === null) return;
    events.drag(press.square, 0, 0);
    if (press.isDrag) events.drop(press.square, isKept ? to : null);
    else if (isKept && to === press.square) events.touch(to);
  }

  root.addEventListener('pointerdown', (event) => {
    if (event.button !== 0 || !event.isPrimary) return;
    const square = cellAt(event.clientX, event.clientY);
    if (square === null) return;
    pressed = { square, x: event.clientX, y: event.clientY, id: event.pointerId, isDrag: false };
    root.classList.add('by-pointer');
    root.setPointerCapture(event.pointerId);
    events.focus(square);
    event.preventDefault();
  });
  root.addEventListener('pointermove', (event) => {
    if (pressed === null || event.pointerId !== pressed.id) return;
    const [byX, byY] = [event.clientX - pressed.x, event.clientY - pressed.y];
    if (!pressed.isDrag && Math.hypot(byX, byY) >= DRAG_FROM_PIXELS) {
      pressed.isDrag = events.lift(pressed.square);
      if (pressed.isDrag) root.classList.add('is-dragging');
    }
    if (pressed.isDrag) events.drag(pressed.square, byX, byY);
  });
  root.addEventListener('pointerup', (event) => {
    if (pressed?.id === event.pointerId) end(cellAt(event.clientX, event.clientY), true);
  });
  root.addEventListener('pointercancel', () => end(null, false));
  root.addEventListener('keydown', (event) => {
    if (event.key === 'Escape') end(null, false);
  });
  // A screen reader's own click comes without a pointer press before it.
  root.addEventListener('click', (event) => {
    if (event.detail !== 0) return;
    const square = event.target instanceof HTMLElement ? cells.indexOf(event.target) : -1;
    if (square >= 0) events.touch(square);
  });
}
