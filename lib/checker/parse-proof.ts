// How a proof graph is written to text and taken from text or data again. Only its form is looked at here;
// whether it proves anything is for `checkProof`.

import { ok, type Result, refuse } from '#lib/kit/result.ts';
import type { Proof, ProofNode } from './proof.ts';

/** Why a text or value is no proof. */
export type ProofReason =
  /** The text breaks off before its end, at this length in characters. */
  | { readonly code: 'truncated'; readonly length: number }
  | { readonly code: 'not-json' }
  | { readonly code: 'version'; readonly found: string }
  /** `field` names the place, as in `nodes[3].replies.e7e8`. */
  | { readonly code: 'field'; readonly field: string; readonly expected: string };

/** More solver moves than any proof has. */
const MOST_MOVES = 200;
/** More nodes than the checker would ever replay. */
const MOST_NODES = 2_000_000;

const MOVE = /^[a-h][1-8][a-h][1-8][qrbn]?$/;

/** One line of JSON, the same for the same proof: `{"v":1,"fen":"...","n":2,"nodes":[...]}`. */
export function writeProof({ fen, n, nodes }: Proof): string {
  return JSON.stringify({ v: 1, fen, n, nodes: nodes.map(({ move, replies }) => ({ move, replies })) });
}

/** A proof from its text, or from a value that was JSON; unknown versions and surplus fields are refused. */
export function parseProof(source: unknown): Result<Proof, ProofReason> {
  if (typeof source !== 'string') return fromValue(source);
  let value: unknown;
  try {
    value = JSON.parse(source);
  } catch {
    const isCut = !source.trimEnd().endsWith('}') || source.split('{').length > source.split('}').length;
    return refuse(isCut ? { code: 'truncated', length: source.length } : { code: 'not-json' });
  }
  return fromValue(value);
}

function fromValue(value: unknown): Result<Proof, ProofReason> {
  if (!isRecord(value)) return badField('', 'an object with v, fen, n and nodes');
  const { v, fen, n, nodes, ...surplus } = value;
  if (v !== 1) return refuse({ code: 'version', found: String(v).slice(0, 20) });
  const [unknown] = Object.keys(surplus);
  if (unknown !== undefined) return badField(unknown.slice(0, 40), 'no such field');
  if (typeof fen !== 'string' || fen.length > 200) return badField('fen', 'a FEN');
  if (typeof n !== 'number' || !Number.isInteger(n) || n < 1 || n > MOST_MOVES) {
    return badField('n', `a whole number from 1 to ${MOST_MOVES}`);
  }
  if (!Array.isArray(nodes) || nodes.length === 0 || nodes.length > MOST_NODES) {
    return badField('nodes', `a list of 1 to ${MOST_NODES} nodes`);
  }
  const parsed: ProofNode[] = [];
  for (const [index, node] of nodes.entries()) {
    const taken = nodeFrom(node, `nodes[${index}]`);
    if (!taken.ok) return taken;
    parsed.push(taken.value);
  }
  return ok({ v: 1, fen, n, nodes: parsed });
}

function nodeFrom(value: unknown, place: string): Result<ProofNode, ProofReason> {
  if (!isRecord(value)) return badField(place, 'an object with move and replies');
  const { move, replies, ...surplus } = value;
  const [unknown] = Object.keys(surplus);
  if (unknown !== undefined) return badField(`${place}.${unknown.slice(0, 40)}`, 'no such field');
  if (typeof move !== 'string' || !MOVE.test(move)) return badField(`${place}.move`, 'a move such as e2e4');
  if (!isRecord(replies)) return badField(`${place}.replies`, 'an object of replies');
  const taken: Record<string, number> = {};
  for (const [reply, child] of Object.entries(replies)) {
    if (!MOVE.test(reply)) return badField(`${place}.replies`, 'moves such as e7e5 as names');
    if (typeof child !== 'number' || !Number.isInteger(child) || child < 0) {
      return badField(`${place}.replies.${reply}`, 'the number of a node');
    }
    taken[reply] = child;
  }
  return ok({ move, replies: taken });
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function badField(field: string, expected: string): Result<never, ProofReason> {
  return refuse({ code: 'field', field, expected });
}
