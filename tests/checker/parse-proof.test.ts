import { expect, test } from 'vitest';
import { checkProof } from '#lib/checker/check-proof.ts';
import { type ProofReason, parseProof, writeProof } from '#lib/checker/parse-proof.ts';
import { MATES, proofOf } from '../support/mates.ts';
import { accepted, refused } from '../support/positions.ts';

test.each(Object.keys(MATES) as (keyof typeof MATES)[])(
  '[T1] a proof comes back from its text: %s',
  (name) => {
    const proof = proofOf(name);
    expect(accepted(parseProof(writeProof(proof)))).toEqual(proof);
    expect(accepted(parseProof(JSON.parse(writeProof(proof))))).toEqual(proof);
  },
);

test('[T1] a text that breaks off anywhere is called truncated', () => {
  const text = writeProof(proofOf('loyd'));
  expect(checkProof(accepted(parseProof(text))).status).toBe('passed');
  for (let length = 0; length < text.length; length += 1) {
    expect(refused(parseProof(text.slice(0, length)))).toEqual({ code: 'truncated', length });
  }
});

const node = { move: 'a1a8', replies: {} };
const fen = MATES.morphy.fen;
const cases: [string, unknown, ProofReason][] = [
  ['no JSON', '{"v":1,}', { code: 'not-json' }],
  ['a list', [], { code: 'field', field: '', expected: 'an object with v, fen, n and nodes' }],
  ['null', null, { code: 'field', field: '', expected: 'an object with v, fen, n and nodes' }],
  ['a later version', { v: 2, fen, n: 1, nodes: [node] }, { code: 'version', found: '2' }],
  ['no version', { fen, n: 1, nodes: [node] }, { code: 'version', found: 'undefined' }],
  [
    'a surplus field',
    { v: 1, fen, n: 1, nodes: [node], by: 'x' },
    { code: 'field', field: 'by', expected: 'no such field' },
  ],
  ['no FEN', { v: 1, n: 1, nodes: [node] }, { code: 'field', field: 'fen', expected: 'a FEN' }],
  [
    'half a move',
    { v: 1, fen, n: 1.5, nodes: [node] },
    { code: 'field', field: 'n', expected: 'a whole number from 1 to 200' },
  ],
  [
    'far too many moves',
    { v: 1, fen, n: 1e9, nodes: [node] },
    { code: 'field', field: 'n', expected: 'a whole number from 1 to 200' },
  ],
  [
    'no nodes',
    { v: 1, fen, n: 1, nodes: [] },
    { code: 'field', field: 'nodes', expected: 'a list of 1 to 2000000 nodes' },
  ],
  [
    'a node that is none',
    { v: 1, fen, n: 1, nodes: [node, 7] },
    { code: 'field', field: 'nodes[1]', expected: 'an object with move and replies' },
  ],
  [
    'notation instead of a move',
    { v: 1, fen, n: 1, nodes: [{ ...node, move: 'Ra8' }] },
    { code: 'field', field: 'nodes[0].move', expected: 'a move such as e2e4' },
  ],
  [
    'a surplus field of a node',
    { v: 1, fen, n: 1, nodes: [{ ...node, note: '' }] },
    { code: 'field', field: 'nodes[0].note', expected: 'no such field' },
  ],
  [
    'replies as a list',
    { v: 1, fen, n: 1, nodes: [{ ...node, replies: [1] }] },
    { code: 'field', field: 'nodes[0].replies', expected: 'an object of replies' },
  ],
  [
    'a reply that is none',
    { v: 1, fen, n: 1, nodes: [{ ...node, replies: { x: 1 } }] },
    { code: 'field', field: 'nodes[0].replies', expected: 'moves such as e7e5 as names' },
  ],
  [
    'a negative node',
    { v: 1, fen, n: 1, nodes: [{ ...node, replies: { a7a6: -1 } }] },
    { code: 'field', field: 'nodes[0].replies.a7a6', expected: 'the number of a node' },
  ],
];
test.each(cases)('[T1] refused: %s', (_what, value, reason) => {
  expect(refused(parseProof(value))).toEqual(reason);
});
