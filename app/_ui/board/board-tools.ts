// What stands below the board: take back, turn, the choice of the new man, and the voice for those who listen.

import type { Move } from '#lib/rules/move.ts';
import { type BoardWords, fill } from './board-words.ts';

/** The tools as the board uses them. */
export interface BoardTools {
  readonly root: HTMLElement;
  say(text: string): void;
  showLength(moves: number): void;
  askPromotion(candidates: readonly Move[], choose: (move: Move) => void): void;
  closePromotion(): void;
}

/** Builds the tools; without `hasUndo` nothing can be taken back. */
export function createTools(
  words: BoardWords,
  does: { readonly hasUndo: boolean; undo(): void; turn(): void },
): BoardTools {
  const root = document.createElement('div');
  const row = document.createElement('div');
  row.className = 'board-tools';
  const voice = document.createElement('p');
  voice.className = 'out-of-sight';
  voice.setAttribute('aria-live', 'polite');
  const undo = button(fill(words, 'take-back'), does.undo);
  if (does.hasUndo) row.append(undo);
  row.append(button(fill(words, 'turn'), does.turn));
  root.append(row, voice);
  let promotion: HTMLElement | null = null;

  function closePromotion(): void {
    promotion?.remove();
    promotion = null;
  }

  return {
    root,
    say(text) {
      voice.textContent = text;
    },
    showLength(moves) {
      undo.disabled = moves === 0;
    },
    askPromotion(candidates, choose) {
      closePromotion();
      promotion = document.createElement('div');
      promotion.className = 'promotion';
      promotion.setAttribute('role', 'group');
      promotion.setAttribute('aria-label', fill(words, 'promote'));
      const label = document.createElement('span');
      label.textContent = fill(words, 'promote');
      promotion.append(label);
      for (const move of candidates) {
        const choice = button(fill(words, `kind-${move.promotion ?? ''}`), () => {
          closePromotion();
          choose(move);
        });
        promotion.append(choice);
      }
      root.prepend(promotion);
      promotion.querySelector('button')?.focus();
    },
    closePromotion,
  };
}

function button(text: string, press: () => void): HTMLButtonElement {
  const made = document.createElement('button');
  made.type = 'button';
  made.className = 'button-plain';
  made.textContent = text;
  made.addEventListener('click', press);
  return made;
}
