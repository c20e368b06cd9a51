// The building itself is tested: order of rooms, purity, sizes, names, mirror tests.
// Every failure says what to do instead. Exceptions stand in one list with a reason, and an
// entry that is no longer needed fails too.

import { existsSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { EXCEPTIONS } from './house/exceptions.ts';
import { importCircle, type SourceFile, sourceFiles } from './house/read-sources.ts';

/** The rooms in order: a room may import only itself and rooms that stand before it. */
const ROOMS = [
  'kit', 'rules', 'checker', 'lots', 'intake', 'people', 'words', 'engine', 'reading', 'book', 'marking',
  'puzzle', 'standings', 'readout', 'pictures', 'machine', 'store', 'queue', 'usecases', 'jobs', 'cli', 'start',
]; // biome-ignore format: one line a storey reads better
const CORE = ROOMS.slice(0, ROOMS.indexOf('machine'));
const DOORS = ['jobs', 'cli', 'start'];
const CORE_PACKAGES: Record<string, string[]> = { checker: ['chess.js'], words: ['intl-messageformat'] };
const APP_MAY_USE = ['usecases', 'kit', 'rules', 'reading', 'words', 'pictures', 'people'];
const APP_MACHINE_FILES = ['config', 'clock', 'log', 'rasterise'];
const APP_TYPES_ONLY = ['puzzle', 'standings', 'readout'];
const FORBIDDEN_NAMES = /^(utils?|helpers?|common|misc|shared|managers?|services?|data|handlers?|index)$/;
const IMPURE = [
  /\bDate\.now\s*\(/,
  /\bnew Date\(\s*\)/,
  /\bperformance\./,
  /\bMath\.random\b/,
  /\bprocess\.\w/,
  /\bset(Timeout|Interval|Immediate)\s*\(/,
  /\bfetch\s*\(/,
];

const files = sourceFiles();
const used = new Set<string>();

/** Keeps the breaches that no exception excuses, and remembers which exceptions were needed. */
function breaches(rule: string, found: string[]): string[] {
  return found.filter((breach) => {
    const path = breach.split(':')[0] ?? '';
    const excuse = EXCEPTIONS.find((one) => one.rule === rule && one.path === path);
    if (excuse) used.add(`${excuse.rule} ${excuse.path}`);
    return !excuse;
  });
}

function roomOf(path: string): string | null {
  return /^lib\/([^/]+)\//.exec(path)?.[1] ?? null;
}

function inRooms(rooms: readonly string[]): SourceFile[] {
  return files.filter((file) => rooms.includes(roomOf(file.path) ?? ''));
}

describe('the house', () => {
  test('every folder in lib/ is a room of the list, so that its place in the order is decided', () => {
    const unknown = inRooms(
      [...new Set(files.map((file) => roomOf(file.path) ?? ''))].filter(
        (room) => room && !ROOMS.includes(room),
      ),
    );
    expect(unknown.map((file) => file.path)).toEqual([]);
  });

  test('a room imports only rooms above it: move the function up, or pass it in', () => {
    const found = files.flatMap((file) => {
      const room = roomOf(file.path);
      if (!room) return [];
      return file.imports
        .filter((one) => one.room && ROOMS.indexOf(one.room) > ROOMS.indexOf(room))
        .map((one) => `${file.path}: imports ${one.target}`);
    });
    expect(breaches('order', found)).toEqual([]);
  });

  test('the core is pure: time comes in as now, chance as a seed, patience as shouldStop', () => {
    const found = inRooms(CORE).flatMap((file) => {
      const room = roomOf(file.path) ?? '';
      const packages = file.imports.filter(
        (one) => one.package && !(CORE_PACKAGES[room] ?? []).includes(one.package),
      );
      return [
        ...packages.map((one) => `${file.path}: imports ${one.target}`),
        ...IMPURE.filter((pattern) => pattern.test(file.code)).map(
          (pattern) => `${file.path}: uses ${pattern.source}`,
        ),
      ];
    });
    expect(breaches('pure', found)).toEqual([]);
  });

  test('the checker believes nobody: it imports kit and chess.js alone', () => {
    const found = inRooms(['checker']).flatMap((file) =>
      file.imports
        .filter((one) => one.room && one.room !== 'kit' && one.room !== 'checker')
        .map((one) => `${file.path}: imports ${one.target}`),
    );
    expect(found).toEqual([]);
  });

  test('Prisma is met only in store: ask a store function instead', () => {
    const found = files
      .filter((file) => /^(lib|app)\//.test(file.path) && roomOf(file.path) !== 'store')
      .flatMap((file) =>
        file.imports
          .filter((one) => /^@prisma\/|store\/generated/.test(one.target))
          .map((one) => `${file.path}: imports ${one.target}`),
      );
    expect(breaches('prisma', found)).toEqual([]);
  });

  test('doors do not import each other', () => {
    const found = files.flatMap((file) => {
      const door = file.path.startsWith('app/') ? 'app' : (roomOf(file.path) ?? '');
      if (door !== 'app' && !DOORS.includes(door)) return [];
      return file.imports
        .filter(
          (one) =>
            (one.room && DOORS.includes(one.room) && one.room !== door) ||
            (door !== 'app' && one.path?.startsWith('app/')),
        )
        .map((one) => `${file.path}: imports ${one.target}`);
    });
    expect(breaches('doors', found)).toEqual([]);
  });

  test('app/ cannot reach a solution by accident: it uses use cases and what people see and tap', () => {
    const found = files
      .filter((file) => file.path.startsWith('app/'))
      .flatMap((file) =>
        file.imports
          .filter((one) => {
            if (!one.room || APP_MAY_USE.includes(one.room)) return false;
            if (one.isTypeOnly && APP_TYPES_ONLY.includes(one.room)) return false;
            return !(
              one.room === 'machine' &&
              APP_MACHINE_FILES.some((name) => one.path?.startsWith(`lib/machine/${name}.`))
            );
          })
          .map((one) => `${file.path}: imports ${one.target}`),
      );
    expect(breaches('app', found)).toEqual([]);
  });

  test("a room's inner folder is imported from nowhere else", () => {
    const found = files.flatMap((file) =>
      file.imports
        .filter(
          (one) =>
            one.path?.includes('/inner/') &&
            one.path.split('/inner/')[0] !== file.path.split('/inner/')[0]?.replace(/\/[^/]+$/, '') &&
            !file.path.startsWith(`${one.path.split('/inner/')[0]}/`),
        )
        .map((one) => `${file.path}: imports ${one.target}`),
    );
    expect(breaches('inner', found)).toEqual([]);
  });

  test('no file imports itself by way of others, types included', () => {
    expect(importCircle(files)).toBeNull();
  });

  test('no file is over 400 lines: split it by the question it answers', () => {
    const found = files.filter((file) => file.lines > 400).map((file) => `${file.path}: ${file.lines} lines`);
    expect(breaches('size', found)).toEqual([]);
  });

  test('file names are kebab-case and say what the file does', () => {
    const found = files
      .filter((file) => file.path.startsWith('lib/'))
      .filter((file) => {
        const parts = file.path.split('/').slice(2);
        const name = parts.at(-1)?.replace(/\.(d\.)?(m?ts|tsx|mjs)$/, '') ?? '';
        return (
          !/^[a-z0-9]+(-[a-z0-9]+)*$/.test(name) ||
          parts.some((part) => FORBIDDEN_NAMES.test(part.replace(/\..*$/, '')))
        );
      })
      .map((file) => `${file.path}: rename it`);
    expect(breaches('names', found)).toEqual([]);
  });

  test('every file of the core and of the use cases has its mirror test', () => {
    const found = inRooms([...CORE, 'usecases'])
      .filter((file) => !/\/(inner|kernel|catalogue)\//.test(file.path) && file.hasRunningCode)
      .filter((file) => !existsSync(file.path.replace(/^lib\//, 'tests/').replace(/\.tsx?$/, '.test.ts')))
      .map(
        (file) =>
          `${file.path}: wants ${file.path.replace(/^lib\//, 'tests/').replace(/\.tsx?$/, '.test.ts')}`,
      );
    expect(breaches('mirror', found)).toEqual([]);
  });

  test('every file of the core opens with what it answers', () => {
    const found = inRooms(CORE)
      .filter(
        (file) => !/\/inner\/.*(-wasm|-outlines)\.ts$/.test(file.path) && !/^\s*(\/\/|\/\*)/.test(file.text),
      )
      .map((file) => `${file.path}: begin with a comment of one to four lines`);
    expect(breaches('opening', found)).toEqual([]);
  });

  test('the list of exceptions only shrinks', () => {
    const idle = EXCEPTIONS.filter((one) => !used.has(`${one.rule} ${one.path}`)).map(
      (one) => `${one.rule} ${one.path}: no longer needed, delete it`,
    );
    expect(idle).toEqual([]);
  });
});
