import { once } from 'node:events';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { createEngine } from '#lib/engine/create-engine.ts';
import { MATES_IN_TWO } from '../cases/judged/mate-in-two.ts';
import { SHORT_MATES } from '../cases/judged/short-mates.ts';
import { TWO_READINGS } from '../cases/judged/two-readings.ts';
import { jsonLines, startTailpiece, tailpiece } from '../support/command-line.ts';
import { markOnDemand, openBook } from '../support/judge-answers.ts';
import { MATES } from '../support/mates.ts';

const folder = mkdtempSync(join(tmpdir(), 'mark-'));
afterAll(() => rmSync(folder, { recursive: true }));
let files = 0;

function puzzleFile(content: unknown): string {
  files += 1;
  const path = join(folder, `puzzle-${files}.json`);
  writeFileSync(path, typeof content === 'string' ? content : JSON.stringify(content));
  return path;
}

const MORPHY = { fen: MATES.morphy.fen, task: 'mate in 2' };

async function markAll(puzzle: unknown, answers: readonly object[], words: readonly string[] = []) {
  const input = answers.map((answer) => `${JSON.stringify(answer)}\n`).join('');
  const { status, out } = await tailpiece(['mark', '--puzzle', puzzleFile(puzzle), ...words], input);
  return { status, lines: jsonLines(out) };
}

describe('[A4] the command line gives the marks that the same answers get in the same program', () => {
  const engine = createEngine();
  const puzzles = [...MATES_IN_TWO, ...SHORT_MATES, ...TWO_READINGS].map(
    (puzzle) => [puzzle.name, puzzle] as const,
  );
  test.each(puzzles)('%s', async (_name, puzzle) => {
    const judged = openBook(engine, puzzle);
    const answers = puzzle.cases.map(({ id, text, meant }) => ({
      id,
      text,
      ...(meant === undefined ? {} : { meant }),
    }));
    const expected = answers.map((answer) => {
      const { outcome, flags, points, p, r, line } = markOnDemand(engine, judged, answer);
      return { id: answer.id, outcome, flags, points, p, r, line };
    });
    const words = puzzle.strict === true ? ['--strict'] : [];
    const { status, lines } = await markAll(puzzle.file, answers, words);
    expect(status).toBe(0);
    const found = lines.map((line) => line as Record<string, unknown>);
    expect(found.map(({ verdicts: _, explanation: __, ...mark }) => mark)).toEqual(expected);
    for (const { explanation } of found) expect(String(explanation).length).toBeGreaterThan(5);
  });
});

test('a line of the contract: every field, in its order, and only the facts that there are', async () => {
  const { lines } = await markAll(MORPHY, [
    { id: 1, text: '1.Ra6! bxa6 2.b7#', author: 'Ann', at: '2026-01-05T18:00:00Z' },
    { id: 2, text: '1.Rxa7+' },
    { id: 3, text: 'great show' },
  ]);
  expect(lines[0]).toMatchObject({
    id: 1,
    outcome: 'solved',
    points: 5,
    line: ['a1a6', 'b7a6', 'b6b7'],
    verdicts: [
      { uci: 'a1a6', verdict: 'holds', mateIn: 2 },
      { uci: 'b6b7', verdict: 'holds', mateIn: 1 },
    ],
  });
  expect(lines[1]).toMatchObject({
    id: 2,
    outcome: 'wrong',
    points: 0,
    line: ['a1a7'],
    verdicts: [{ uci: 'a1a7', verdict: 'slips', by: 'b8a7' }],
  });
  expect(lines[2]).toMatchObject({ id: 3, outcome: 'chatter', points: 0, line: null, verdicts: [] });
  for (const line of lines) {
    expect(Object.keys(line as object)).toEqual([
      'id',
      'outcome',
      'flags',
      'points',
      'p',
      'r',
      'line',
      'verdicts',
      'explanation',
    ]);
  }
});

test('[R8] the line that the viewer chose is taken', async () => {
  // Either rook reaches the eighth rank: on e8 it mates, on d8 the bishop takes it and the mate comes a move later.
  const fen = '6k1/5ppp/8/8/7b/8/5PPP/3RR1K1 w - - 0 1';
  const text = 'rook to the eighth rank, mate';
  const { lines } = await markAll(
    { fen, task: 'mate in 1' },
    [
      { id: 1, text },
      { id: 2, text, meant: ['e1e8'] },
      { id: 3, text, meant: ['d1d8'] },
    ],
    ['--strict'],
  );
  expect(lines.map((line) => (line as { outcome: string }).outcome)).toEqual([
    'ambiguous',
    'solved',
    'slower',
  ]);
});

test('[P1] --scheme overrules the puzzle', async () => {
  const puzzle = { ...MORPHY, scheme: 'full-line' };
  const { lines } = await markAll(puzzle, [{ id: 1, text: '1.Ra6' }], ['--scheme', 'key-move']);
  expect(lines[0]).toMatchObject({ points: 5 });
});

test('malformed lines are answered in their place, reading goes on, the status is 2', async () => {
  const input = [
    '{"id":1,"text":"Ra6"}',
    '{"id":2}',
    '{"id":3,"text":"Ra6","meant":"a1a6"}',
    '{"id":4,"text":"Ra6","author":7}',
    'x',
    '{"id":6,"text":"Ra6"}',
  ].join('\n');
  const { status, out } = await tailpiece(['mark', '--puzzle', puzzleFile(MORPHY)], input);
  expect(status).toBe(2);
  expect(jsonLines(out)).toEqual([
    expect.objectContaining({ id: 1, outcome: 'solved' }),
    { line: 2, error: '"text": expected a text, found nothing' },
    { line: 3, error: '"meant": expected a list of moves such as ["e2e4"], found "a1a6"' },
    { line: 4, error: '"author": expected a text, found 7' },
    { line: 5, error: 'expected a JSON object, found "x"' },
    expect.objectContaining({ id: 6, outcome: 'solved' }),
  ]);
});

test('an answer is marked while the input is still open, and the next waits for its own line', async () => {
  const child = startTailpiece(['mark', '--puzzle', puzzleFile(MORPHY)]);
  for (const [id, text, outcome] of [
    [1, '1.Ra6', 'solved'],
    [2, 'nice one', 'chatter'],
    [3, '1.Ra5', 'wrong'],
  ] as const) {
    child.stdin.write(`${JSON.stringify({ id, text })}\n`);
    const [out] = await once(child.stdout, 'data');
    expect(jsonLines(String(out))).toEqual([expect.objectContaining({ id, outcome })]);
  }
  child.stdin.end();
  expect(await once(child, 'close')).toEqual([0, null]);
});

test('answers that are wrong, illegal, chatter or cannot be read are outcomes: status 0', async () => {
  const answers = ['1.Ra5', '1.Qh5', 'hello', 'R?8'].map((text, id) => ({ id, text }));
  const { status, lines } = await markAll(MORPHY, answers);
  expect(status).toBe(0);
  expect(lines.map((line) => (line as { outcome: string }).outcome)).toEqual([
    'wrong',
    'impossible',
    'chatter',
    'unreadable',
  ]);
});

test('[R8] a line that no reading has, and lines with carriage returns, change nothing', async () => {
  const given = [
    { id: 1, text: '1.Ra6', meant: ['h2h4'] },
    { id: 2, text: '1.Ra6', meant: [] },
  ];
  const input = given.map((answer) => `${JSON.stringify(answer)}\r\n`).join('');
  const { status, out } = await tailpiece(['mark', '--puzzle', puzzleFile(MORPHY)], input);
  expect(status).toBe(0);
  for (const line of jsonLines(out)) expect(line).toMatchObject({ outcome: 'solved', line: ['a1a6'] });
});

describe('a puzzle file that is refused: status 2 and one line that names the field', () => {
  test.each([
    ['no JSON', '{"fen":', '--puzzle: expected a file with a JSON object'],
    ['no task', { fen: MORPHY.fen }, '--puzzle: task: expected "mate in N"'],
    ['a bad FEN', { ...MORPHY, fen: '8/8' }, '--puzzle: fen: expected a legal position'],
    ['an unknown field', { ...MORPHY, colour: 1 }, '--puzzle: colour: expected one of'],
  ])('%s', async (_what, content, complaint) => {
    const { status, out, err } = await tailpiece(['mark', '--puzzle', puzzleFile(content)]);
    expect([status, out]).toEqual([2, '']);
    expect(err).toContain(`tailpiece: mark: ${complaint}`);
    expect(err.trimEnd().split('\n')).toHaveLength(1);
  });

  test('an unknown scheme', async () => {
    const { status, err } = await tailpiece(['mark', '--puzzle', puzzleFile(MORPHY), '--scheme', 'own']);
    expect([status, err]).toEqual([
      2,
      'tailpiece: mark: --scheme: expected full-line or key-move, found "own"\n',
    ]);
  });
});

test('[A4] 5,000 answers keep their order, and equal texts their marks', async () => {
  const texts = ['1.Ra6', '1.Ra6 bxa6 2.b7#', '1.Ra5', 'Rxa7+', 'hello', 'Rook to a6'];
  const answers = Array.from({ length: 5_000 }, (_, id) => ({ id, text: texts[id % texts.length] }));
  const { status, lines } = await markAll(MORPHY, answers);
  expect([status, lines.length]).toEqual([0, 5_000]);
  const marks = new Map<string, string>();
  for (const [at, line] of lines.entries()) {
    const { id, ...mark } = line as { id: number };
    expect(id).toBe(at);
    const text = texts[at % texts.length] ?? '';
    const written = JSON.stringify(mark);
    expect(marks.get(text) ?? written).toBe(written);
    marks.set(text, written);
  }
});
