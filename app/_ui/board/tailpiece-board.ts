// The board as a custom element. It takes over a diagram that the server drew, lays a grid over it, and
// by `mode` writes an answer (`answer`), asks about a first move (`try`) or shows lines (`show`).
// Entry of the browser bundle: rules only, nothing of reading, engine or book.
//
//   <tailpiece-board data-fen="..." data-mode="answer" data-field="answer" data-words="{...}" data-letters="KQRBN">

import { legalMoves } from '#lib/rules/legal-moves.ts';
import type { Move } from '#lib/rules/move.ts';
import { parseFen } from '#lib/rules/parse-fen.ts';
import { type Position, type Square, squareName } from '#lib/rules/position.ts';
import { writeUci } from '#lib/rules/uci.ts';
import {
  type AnswerLine,
  extendLine,
  lastPosition,
  shortenLine,
  shortMove,
  startLine,
} from './answer-line.ts';
import { type BoardDrawing, takeOverDiagram, unitsPerPixel } from './board-drawing.ts';
import { type BoardGrid, createGrid } from './board-grid.ts';
import { type BoardTools, createTools } from './board-tools.ts';
import { type BoardWords, cellName, fill, manName, parseWords } from './board-words.ts';
import { followField } from './follow-field.ts';
import { type Arrow, arrowOf, followLines } from './follow-lines.ts';
import { showLocalTimes } from './local-times.ts';
import { reachable, touchSquare } from './touch-square.ts';

type Mode = 'answer' | 'try' | 'show';

class TailpieceBoard extends HTMLElement {
  private words: BoardWords = {};
  private mode: Mode = 'show';
  private line: AnswerLine | null = null;
  private drawing: BoardDrawing | null = null;
  private grid: BoardGrid | null = null;
  private tools: BoardTools | null = null;
  private chosen: Square | null = null;
  private isFlipped = false;
  /** The arrow that the page shows with a position of its own. */
  private arrow: Arrow = null;
  /** False while a position is shown that is not the puzzle's: first moves begin there alone. */
  private isPlayable = true;
  private onLine: (line: AnswerLine, change: 'added' | 'taken-back' | 'cleared') => void = () => {};

  connectedCallback(): void {
    const svg = this.querySelector('svg');
    const start = parseFen(this.dataset.fen ?? '');
    if (this.grid !== null || !(svg instanceof SVGSVGElement) || !start.ok) return;
    this.drawing = takeOverDiagram(svg);
    if (this.drawing === null) return;
    this.words = parseWords(this.dataset.words);
    this.mode = modeOf(this.dataset.mode);
    this.line = startLine(start.value);
    this.arrow = arrowOf(this.dataset.last ?? '');
    this.isPlayable = this.mode !== 'try' || this.dataset.fen === this.dataset.start;
    this.build(svg);
    this.connect(start.value);
    this.show();
  }

  private build(svg: SVGSVGElement): void {
    const stage = document.createElement('div');
    stage.className = 'board-stage';
    this.grid = createGrid(fill(this.words, 'board'), {
      touch: (square) => this.touch(square),
      lift: (square) => this.lift(square),
      drag: (square, x, y) => {
        const unit = unitsPerPixel(svg);
        this.drawing?.shiftMan(square, x * unit, y * unit);
      },
      drop: (from, to) => this.drop(from, to),
      escape: () => this.letGo(),
    });
    svg.replaceWith(stage);
    stage.append(svg, this.grid.root);
    // The grid says every man; the picture's own list would be heard twice.
    svg.setAttribute('aria-hidden', 'true');
    svg.removeAttribute('role');
    this.tools = createTools(this.words, {
      hasUndo: this.mode === 'answer',
      undo: () => this.undo(),
      turn: () => this.turnBoard(),
    });
    stage.after(this.tools.root);
  }

  private connect(start: Position): void {
    if (this.mode === 'answer') {
      const field = document.getElementById(this.dataset.field ?? '');
      if (!(field instanceof HTMLTextAreaElement)) return;
      this.onLine = followField(field, {
        start,
        words: this.words,
        letters: this.letters,
        readAt: this.dataset.read ?? null,
        show: (line) => this.setLine(line),
      });
      return;
    }
    followLines(document, (step) => {
      const position = parseFen(step.fen);
      if (!position.ok) return;
      this.isPlayable = step.fen === this.dataset.start;
      this.arrow = step.arrow;
      this.setLine(startLine(position.value));
      this.tools?.say(step.text);
    });
  }

  private get letters(): string {
    return this.dataset.letters ?? 'KQRBN';
  }

  private legal(): readonly Move[] {
    const isLive = this.mode === 'answer' || (this.mode === 'try' && this.isPlayable);
    return this.line === null || !isLive ? [] : legalMoves(lastPosition(this.line));
  }

  private show(): void {
    const { line, grid, drawing } = this;
    if (line === null) return;
    const position = lastPosition(line);
    const legal = this.legal();
    const targets = this.chosen === null ? [] : reachable(legal, this.chosen);
    drawing?.showMen(position, this.isFlipped);
    drawing?.showMarks(this.chosen, targets);
    drawing?.showArrow(line.moves[line.moves.length - 1] ?? this.arrow);
    grid?.name((square) => cellName(this.words, position, square));
    grid?.mark({ chosen: this.chosen, targets, movable: new Set(legal.map((move) => move.from)) });
    this.tools?.showLength(line.moves.length);
  }

  private setLine(line: AnswerLine): void {
    this.line = line;
    this.chosen = null;
    this.tools?.closePromotion();
    this.show();
  }

  private touch(square: Square): void {
    if (this.line === null) return;
    const touched = touchSquare(this.legal(), this.chosen, square);
    if (touched.kind === 'choose') this.choose(touched.from, touched.targets.length);
    else if (touched.kind === 'move') this.offer(touched.candidates);
    else if (touched.kind === 'let-go') this.letGo();
    else if (this.mode !== 'show') this.tools?.say(fill(this.words, 'nothing'));
  }

  private choose(from: Square, count: number): void {
    if (this.line === null) return;
    this.chosen = from;
    this.tools?.closePromotion();
    this.show();
    const man = manName(this.words, lastPosition(this.line), from) ?? '';
    this.tools?.say(fill(this.words, 'chosen', { man, square: squareName(from), count: String(count) }));
  }

  private letGo(): void {
    if (this.chosen === null) return;
    this.chosen = null;
    this.tools?.closePromotion();
    this.show();
    this.tools?.say(fill(this.words, 'let-go'));
  }

  private lift(square: Square): boolean {
    const targets = reachable(this.legal(), square);
    if (targets.length === 0) return false;
    this.choose(square, targets.length);
    return true;
  }

  private drop(from: Square, to: Square | null): void {
    if (to === null || to === from) return;
    const touched = touchSquare(this.legal(), from, to);
    if (touched.kind === 'move') this.offer(touched.candidates);
    else this.letGo();
  }

  private offer(candidates: readonly [Move, ...Move[]]): void {
    if (candidates.length === 1) this.play(candidates[0]);
    else this.tools?.askPromotion(candidates, (move) => this.play(move));
  }

  private play(move: Move): void {
    if (this.line === null) return;
    if (this.mode === 'try') {
      const address = this.dataset.try;
      if (address !== undefined) location.assign(address.replace('MOVE', writeUci(move)));
      return;
    }
    const said = shortMove(lastPosition(this.line), move, this.letters);
    const line = extendLine(this.line, move);
    this.setLine(line);
    this.onLine(line, 'added');
    const side = lastPosition(line).turn === 'w' ? 'white-to-move' : 'black-to-move';
    this.tools?.say(fill(this.words, 'played', { move: said, turn: fill(this.words, side) }));
    this.grid?.focus(move.to);
    this.dispatchEvent(new CustomEvent('board-move', { bubbles: true, detail: { uci: writeUci(move) } }));
  }

  private undo(): void {
    if (this.line === null || this.line.moves.length === 0) return;
    const line = shortenLine(this.line);
    this.setLine(line);
    this.onLine(line, 'taken-back');
    this.tools?.say(fill(this.words, 'taken-back'));
  }

  private turnBoard(): void {
    this.isFlipped = !this.isFlipped;
    this.drawing?.turnFigures();
    this.grid?.turn(this.isFlipped);
    this.show();
    this.tools?.say(fill(this.words, this.isFlipped ? 'black-below' : 'white-below'));
  }
}

function modeOf(text: string | undefined): Mode {
  return text === 'answer' || text === 'try' ? text : 'show';
}

if (!customElements.get('tailpiece-board')) customElements.define('tailpiece-board', TailpieceBoard);
showLocalTimes(document);
