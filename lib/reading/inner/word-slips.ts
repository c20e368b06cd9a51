// Rule R13 for words: which man is meant by a name with one slip in it ("kinght", "queeen")?

import { cueAt } from './cue-table.ts';
import { PIECE_NAMES, senseIn, sensesOf } from './word-table.ts';

/** Common words one slip away from a man's name, which are never taken for one. */
const NEVER = new Set(
  `right might light fight sight tight eight lights nights knights rock room root book look took cook hook brook crook rooms dawn lawn down own
   kind kinda ring sing wing thing bring kin been seen keen green tours hours four your pour our over oven town towns danke dame same came
   fine fill full file felt ross cross boss loss gross turn turns term torn storm rein reine feine meine deine seine peon pion done donna don
   royal real rest bring turm team tour course horse house worse hours horses dama drama dana rega regular tore store more torre`.split(
    /\s+/,
  ),
);

/** The kinds of the one man whose name is one slip away; null where there is none. */
export function nearestPieceWord(word: string): number | null {
  if (word.length < 4 || word.length > 10 || NEVER.has(word) || sensesOf(word).length > 0) return null;
  if (cueAt([word], 0) !== null) return null;
  let kinds = 0;
  for (const name of PIECE_NAMES) {
    if (name.length < 4 || Math.abs(name.length - word.length) > 1) continue;
    if (!beginsAlike(word, name) || !isOneSlipAway(word, name)) continue;
    const sense = senseIn(name, 'piece');
    if (sense === null || (kinds !== 0 && kinds !== sense.kinds)) return null;
    kinds = sense.kinds;
  }
  return kinds === 0 ? null : kinds;
}

/** One slip leaves at least one of the first two letters in its place or beside it: most words fall here. */
function beginsAlike(word: string, name: string): boolean {
  const first = word.charCodeAt(0);
  const second = word.charCodeAt(1);
  const one = name.charCodeAt(0);
  const two = name.charCodeAt(1);
  return one === first || one === second || two === first || two === second;
}

/** One letter too many, too few or another, or two that changed places. */
function isOneSlipAway(word: string, name: string): boolean {
  let from = 0;
  while (from < word.length && word.charAt(from) === name.charAt(from)) from += 1;
  const rest = word.slice(from);
  const due = name.slice(from);
  if (rest.slice(1) === due || rest === due.slice(1) || rest.slice(1) === due.slice(1)) return true;
  return (
    rest.charAt(0) === due.charAt(1) && rest.charAt(1) === due.charAt(0) && rest.slice(2) === due.slice(2)
  );
}
