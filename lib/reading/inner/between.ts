// What do the words and signs between two moves say about the one before and the one behind (rules R3, R5, R10)?

import { type Cue, cueAt } from './cue-table.ts';
import type { AnyLexeme } from './phrase.ts';
import { senseIn } from './word-table.ts';

/** Labels of further variations: "b) ...". */
const LABELS = new Set(['b', 'c', 'd']);

/** Words that join moves and are no prose. */
export const CONNECTORS: ReadonlySet<string> = new Set(
  'and then und y et e и ve dann folgt follows sigue следует luego puis poi next followed by & + затем потом sonra ensuite entao'.split(
    ' ',
  ),
);

/** Signs of the annotators for "with the idea". */
const TRIANGLES = '∆△';

/** Words that speak of all members of a list. */
const SEVERAL = new Set(
  `all both none neither look seem fail lose are aren't were don't didn't alle beide sehen scheitern gehen todos ambos tous toutes
   tutti entrambi оба все`.split(/\s+/),
);

/** Words that praise a move until a "but" takes the praise back; accents are folded away. */
const PRAISE = new Set(
  `mate matt mat matto winning good natural strong right tempting promising nice nasty obvious logical attractive fine deadly crushing correct great best decent
   gut stark naturlich verlockend logisch richtig gewonnen bien bueno buena fuerte atractivo bon bonne fort forte naturel buono buona bella
   naturale bom boa хорошо сильно красиво заманчиво iyi guclu`.split(/\s+/),
);

/** What has been found between two moves; filled by one reading of it. */
export interface Between {
  readonly words: string[];
  readonly cues: Set<Cue | 'slash'>;
  rejectsLast: 0 | 1 | 2;
  rejectsNext: 0 | 1 | 2;
  number: number | null;
  dots: number;
  isFreshStart: boolean;
  /** The words are an "if" that belongs to the move before. */
  isForLast: boolean;
  /** A question mark stands in it. */
  isAsked: boolean;
  /** Praise and comparison that speak of the move before. */
  readonly saysOfLast: Set<Cue>;
}

/** What stands between two moves, or before the first. */
export function readBetween(gap: readonly AnyLexeme[], isFirst: boolean): Between {
  const words: string[] = [];
  const breaks: boolean[] = [];
  const found: Between = {
    words,
    cues: new Set(),
    rejectsLast: 0,
    rejectsNext: 0,
    number: null,
    dots: 0,
    isFreshStart: false,
    isForLast: false,
    isAsked: false,
    saysOfLast: new Set(),
  };
  let dashes = 0;
  for (const [index, lexeme] of gap.entries()) {
    if (lexeme.type === 'word') {
      words.push(lexeme.word);
      breaks.push(false);
      if (lexeme.word === 'b' && isColon(gap[index + 1])) found.cues.add('black');
      if (LABELS.has(lexeme.word) && gap[index + 1]?.type === 'close') found.cues.add('or');
    } else if (lexeme.type === 'number') {
      found.number = lexeme.n;
      found.dots = lexeme.dots;
    } else if (lexeme.type === 'sign') {
      if (lexeme.sign === '.') found.dots += 1;
      if (';\n|'.includes(lexeme.sign) || (lexeme.sign === '.' && words.length > 0))
        found.isFreshStart = true;
      if (lexeme.sign === '/') found.cues.add('slash');
      if (lexeme.sign === '~') found.cues.add('any');
      if (lexeme.sign === '?') found.isAsked = true;
      if (lexeme.sign === '-') dashes += 1;
      if (TRIANGLES.includes(lexeme.sign)) found.cues.add('threat');
      if (breaks.length > 0 && '.;!?\n'.includes(lexeme.sign)) breaks[breaks.length - 1] = true;
      if (words.length === 0 && '.;!?\n'.includes(lexeme.sign)) {
        words.push('');
        breaks.push(true);
      }
      if (lexeme.sign === ',' || lexeme.sign === ':') {
        words.push(',');
        breaks.push(false);
      }
    } else if (lexeme.type === 'open' || lexeme.type === 'close') {
      words.push('');
      breaks.push(true);
    }
  }
  if (dashes >= 2) found.cues.add('any');
  readCues(words, breaks, found, isFirst);
  if (REFUTERS.has(words.slice(-2).join(' ')) || REFUTERS.has(words[words.length - 1] ?? ''))
    found.cues.add('refutation');
  if (words.slice(0, 4).some((word) => SEVERAL.has(word))) found.saysOfLast.add('of-several');
  return found;
}

/** "Qd6 fails to Nxd6": the last words before the defence that refutes a move. */
const REFUTERS = new Set(
  `fails to|fail to|failed to|loses to|runs into|run into|walks into|met by|answered by|because of|due to|scheitert an|wegen|culpa de|causa de|cause de|causa di|
   из за|из-за|yuzunden`
    .split('|')
    .map((phrase) => phrase.trim()),
);

/** "Before he escapes", "never escapes": what comes to nothing does not come to it. */
const DENIALS = new Set(
  'before until unless otherwise or if never no nowhere nirgends nobody nothing cannot bevor ohne nie antes avant prima'.split(
    ' ',
  ),
);

/** Cues that speak of the move before and change nothing by themselves. */
const OF_LAST: ReadonlySet<Cue> = new Set(['praise-after', 'better-after', 'also-after', 'beside-after']);

/** A comma or a "but" between a word and the move: they no longer belong together. */
function separates(word: string): boolean {
  return word === ',' || cueAt([word], 0)?.cue === 'but';
}

function isColon(lexeme: AnyLexeme | undefined): boolean {
  return lexeme?.type === 'sign' && lexeme.sign === ':';
}

function readCues(
  words: readonly string[],
  breaks: readonly boolean[],
  found: Between,
  isFirst: boolean,
): void {
  let at = 0;
  while (at < words.length) {
    const hit = cueAt(words, at);
    if (hit === null) {
      at += 1;
      continue;
    }
    const { cue } = hit;
    const next = at + hit.words;
    const isBrokenBefore = breaks.slice(0, at).includes(true);
    const isBrokenAfter = breaks.slice(at, words.length).includes(true);
    if (cue === 'hopeless') {
      if (!isBrokenBefore && at < 6 && !words.slice(0, next + 1).some((word) => DENIALS.has(word)))
        found.rejectsLast = 2;
    } else if (cue === 'wrong') {
      const isAlone = words.slice(next).every((word) => word === ',');
      if (!isFirst && at === 0 && (isAlone || words[next] === ',' || breaks[at] === true))
        found.rejectsLast = 2;
      else if (isAlone && next < words.length && !isBrokenAfter) found.rejectsNext = 2;
    } else if (cue === 'well-white' || cue === 'well-black') {
      if (!isBrokenBefore && at < 6) found.saysOfLast.add(cue);
    } else if (cue === 'nothing') {
      const isWhole = next >= words.length || breaks[at] === true;
      const before = words[at - 1];
      if (isWhole && !isBrokenBefore && (before === undefined || before === ',' || CONNECTORS.has(before)))
        found.rejectsLast = 2;
    } else if (cue === 'reject-that') {
      // Said in the sentence of the move or in the next one.
      const broken = breaks.slice(0, at).filter(Boolean).length;
      if (at < 6 && broken < 2 && !changesSubject(words, at)) found.rejectsLast = 2;
    } else if (cue === 'elsewhere') {
      if (!isBrokenAfter) found.rejectsNext = 2;
    } else if (cue === 'branch-after') {
      if (at === 0) found.isForLast = true;
    } else if (cue === 'reject-after' || cue === 'doubt-after') {
      if (!isBrokenBefore && at < (cue === 'reject-after' ? 6 : 3) && !changesSubject(words, at)) {
        found.rejectsLast = cue === 'reject-after' || found.rejectsLast === 2 ? 2 : 1;
      }
    } else if (OF_LAST.has(cue)) {
      if (!isBrokenBefore && at < 4 && !changesSubject(words, at)) found.saysOfLast.add(cue);
    } else if (cue === 'reject-before' || cue === 'doubt-before') {
      const isNear = words.length - next < 4 && !words.slice(next).some(separates);
      if (!isBrokenAfter && isNear) found.rejectsNext = cue === 'reject-before' ? 2 : 1;
      // "... is the famous trap, so don't."
      if (at > 0 && breaks[next - 1] === true && !isBrokenBefore && cue === 'reject-before')
        found.rejectsLast = 2;
    } else if (cue === 'looks-after') {
      const isPraise = words.slice(next, next + 3).some((word) => PRAISE.has(word));
      if (isPraise && !isBrokenBefore && at < 3 && !changesSubject(words, at))
        found.saysOfLast.add('praise-after');
    } else if (cue === 'no') {
      // "no choice", "no defence" correct nothing; "no," "no wait" and "no Re8" do.
      const follower = words[next];
      // "No Td7, sino Te8" turns the first move down before it is read.
      if (isFirst && follower === undefined && breaks[at] !== true) {
        found.rejectsNext = 2;
        break;
      }
      if (
        follower === undefined ||
        follower === ',' ||
        follower === '' ||
        breaks[at] === true ||
        cueAt(words, next)?.cue === 'correct'
      ) {
        found.cues.add('correct');
        // "Bg5 at once? No: Qxg5+" is the writer's own question, answered; and so is "fails? no, it works".
        if (found.isAsked) found.rejectsLast = found.rejectsLast === 0 ? 1 : 0;
      }
    } else if (
      (TALK.has(cue) && (isBrokenAfter || hasBut(words, next))) ||
      (words[at] === 'actually' && isBrokenAfter)
    ) {
      // "Black wants to run, but Qh5", "The threat is clear. Kf8", "Actually it is easy. Nc3": nothing is said of the move.
    } else if (cue !== 'none') {
      found.cues.add(cue);
      // "Qg7 is stalemate? No, it's mate."
      if (found.isAsked && found.rejectsLast > 0 && cueAt(words, at + 1) === null && isNo(words[at]))
        found.rejectsLast = 0;
    }
    at = next;
  }
}

/** Cues that speak of the move only in its own sentence. */
const TALK: ReadonlySet<Cue> = new Set(['menace', 'threat', 'threat-white', 'threat-black']);

function hasBut(words: readonly string[], start: number): boolean {
  return words.slice(start).some((_, index) => cueAt(words, start + index)?.cue === 'but');
}

function isNo(word: string | undefined): boolean {
  return word !== undefined && cueAt([word], 0)?.cue === 'no';
}

/** No connector, no check, no cue: a word of prose. */
export function isPlain(word: string): boolean {
  return (
    !CONNECTORS.has(word) &&
    senseIn(word, 'check') === null &&
    senseIn(word, 'passant') === null &&
    cueAt([word], 0) === null
  );
}

/** Who else a sentence can speak of. */
const PERSONS = new Set('he she they opponent er il elle lui lei ele ela el ella он она'.split(' '));

/** "... and Black can't": what follows no longer speaks of the move. */
function changesSubject(words: readonly string[], before: number): boolean {
  return words.slice(0, before).some((word) => {
    if (PERSONS.has(word)) return true;
    const cue = cueAt([word], 0)?.cue;
    return cue === 'white' || cue === 'black' || CONNECTORS.has(word) || senseIn(word, 'piece') !== null;
  });
}
