import { expect, test } from 'vitest';
import { checkProof } from '#lib/checker/check-proof.ts';
import { parseProof } from '#lib/checker/parse-proof.ts';
import { prove } from '#lib/cli/prove.ts';
import { legalMoves } from '#lib/rules/legal-moves.ts';
import { writeUci } from '#lib/rules/uci.ts';
import { tailpiece } from '../support/command-line.ts';
import { MATES } from '../support/mates.ts';
import { accepted, positionOf, START_FEN } from '../support/positions.ts';
import { mateAfterEach } from '../support/small-prover.ts';

const CASES = ['morphy', 'loyd', 'amelung', 'schwarz'] as const;

test.each(CASES)(
  '[V1] every legal first move is in exactly one list, as the second prover says: %s',
  async (name) => {
    const { fen, moves } = MATES[name];
    const { status, out, err } = await tailpiece(['prove', '--fen', fen, '--moves', String(moves)]);
    expect([status, err]).toEqual([0, '']);
    const answer = JSON.parse(out);
    expect(Object.keys(answer)).toEqual(['holds', 'mateIn', 'keys', 'slower', 'refuted', 'nodes', 'ms']);
    expect(answer).toMatchObject({ holds: true, mateIn: moves });
    const listed = new Map<string, number | null>();
    for (const { uci, mateIn } of [...answer.keys, ...answer.slower]) listed.set(uci, mateIn);
    for (const { uci } of answer.refuted) listed.set(uci, null);
    const expected = mateAfterEach(positionOf(fen), moves + 1);
    expect([...listed].sort()).toEqual([...expected].sort());
    expect(answer.keys.length + answer.slower.length + answer.refuted.length).toBe(expected.size);
  },
);

test('[T1] --proof prints a graph that the checker passes', async () => {
  const { fen } = MATES.loyd;
  const { out } = await tailpiece(['prove', '--fen', fen, '--moves', '2', '--proof']);
  const { proof, keys } = JSON.parse(out);
  expect(keys).toEqual([{ uci: 'h5a5', san: 'Qa5', mateIn: 2 }]);
  expect(checkProof(accepted(parseProof(proof)))).toMatchObject({ status: 'passed' });
});

test('[V1] a claim that is false: holds is false, there is no proof, a stalemating move has no reply', async () => {
  const { status, out } = await tailpiece([
    'prove',
    '--fen',
    '7k/8/5KQ1/8/8/8/8/8 w - - 0 1',
    '--moves',
    '1',
    '--proof',
  ]);
  expect(status).toBe(0);
  const answer = JSON.parse(out);
  expect(answer.keys.map(({ san }: { san: string }) => san).sort()).toEqual(['Qg7#']);
  expect(answer.refuted).toContainEqual({ uci: 'g6f7', san: 'Qf7', by: null });
  const none = JSON.parse(
    (await tailpiece(['prove', '--fen', MATES.morphy.fen, '--moves', '1', '--proof'])).out,
  );
  expect(none).toMatchObject({ holds: false, mateIn: null, keys: [], proof: null });
});

test('[V0] out of budget: no claim is made, and it says how far it came', async () => {
  const position = positionOf(START_FEN);
  const { answer, complaint } = await prove(position, { moves: 5, withProof: true, proofNodes: 2000 });
  expect(complaint).toMatch(/^out of budget \(2000 nodes a first move\): \d+ of 20 first moves settled$/);
  expect(Object.keys(answer)).toEqual([
    'outOfBudget',
    'keys',
    'slower',
    'refuted',
    'unfinished',
    'nodes',
    'ms',
  ]);
  const lists = JSON.parse(JSON.stringify(answer));
  const all = [...lists.keys, ...lists.slower, ...lists.refuted, ...lists.unfinished];
  expect(all.map(({ uci }) => uci).sort()).toEqual(legalMoves(position).map(writeUci).sort());
  expect(lists.unfinished.length).toBeGreaterThan(0);
});
