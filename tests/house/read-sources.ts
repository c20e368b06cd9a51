// Reads the source tree as text: what each file imports, how long it is, what it does at run time.

import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { dirname, join, normalize } from 'node:path';

/** One import or re-export of a file. */
export interface Import {
  readonly target: string;
  readonly isTypeOnly: boolean;
  /** Path from the project's folder where the target is a file of ours; null for a package. */
  readonly path: string | null;
  /** Room in lib/, where it lies in one. */
  readonly room: string | null;
  /** Package name (`node:fs` for built-ins); null for a file of ours. */
  readonly package: string | null;
}

/** A file of lib/, app/, prisma/ or tests/. */
export interface SourceFile {
  readonly path: string;
  readonly text: string;
  /** The text without comments and strings' insides that look like them. */
  readonly code: string;
  readonly lines: number;
  readonly imports: readonly Import[];
  /** False for a file of types and interfaces alone. */
  readonly hasRunningCode: boolean;
}

const IMPORT = /(?:^|\n)\s*(?:import|export)\s+(type\s+)?(?:[\w*{}\s,$]+\s+from\s+)?['"]([^'"\n]+)['"]/g;
const DYNAMIC = /\bimport\(\s*(?:\/\*[^*]*\*\/\s*)?['"]([^'"\n]+)['"]\s*\)/g;

/** Every tracked or new TypeScript file that is not ignored; the kernel's own language counts for size alone. */
export function sourceFiles(): SourceFile[] {
  const listed = execFileSync(
    'git',
    ['ls-files', '-co', '--exclude-standard', '--', 'lib', 'app', 'prisma', 'tests'],
    {
      encoding: 'utf8',
    },
  );
  return listed
    .split('\n')
    .filter((path) => /\.(ts|tsx|mts|mjs)$/.test(path) && existsSync(path))
    .map(readSource);
}

function readSource(path: string): SourceFile {
  const text = readFileSync(path, 'utf8');
  const code = text.replace(/\/\*[\s\S]*?\*\//g, '').replace(/(^|\s)\/\/[^\n]*/g, '$1');
  const isKernel = path.startsWith('lib/engine/kernel/');
  const imports: Import[] = [];
  if (!isKernel) {
    for (const match of code.matchAll(IMPORT))
      imports.push(describeImport(path, match[2] ?? '', Boolean(match[1])));
    for (const match of code.matchAll(DYNAMIC)) imports.push(describeImport(path, match[1] ?? '', false));
  }
  return {
    path,
    text,
    code: isKernel ? '' : code,
    lines: text.split('\n').length - 1,
    imports,
    hasRunningCode: /(^|\n)\s*(export\s+)?(async\s+)?(function|const|let|class)\b/.test(code),
  };
}

function describeImport(from: string, target: string, isTypeOnly: boolean): Import {
  const path = target.startsWith('#lib/')
    ? `lib/${target.slice(5)}`
    : target.startsWith('.')
      ? normalize(join(dirname(from), target))
      : null;
  const name = target.startsWith('@')
    ? target.split('/').slice(0, 2).join('/')
    : (target.split('/')[0] ?? target);
  return {
    target,
    isTypeOnly,
    path,
    room: path ? (/^lib\/([^/]+)\//.exec(path)?.[1] ?? null) : null,
    package: path ? null : name,
  };
}

/** The files of one import circle in order, or null where there is none. */
export function importCircle(files: readonly SourceFile[]): string[] | null {
  const byPath = new Map(files.map((file) => [file.path, file]));
  const state = new Map<string, 'open' | 'done'>();
  const trail: string[] = [];
  const visit = (path: string): string[] | null => {
    if (state.get(path) === 'done') return null;
    if (state.get(path) === 'open') return [...trail.slice(trail.indexOf(path)), path];
    state.set(path, 'open');
    trail.push(path);
    for (const one of byPath.get(path)?.imports ?? []) {
      if (!one.path || !byPath.has(one.path)) continue;
      const circle = visit(one.path);
      if (circle) return circle;
    }
    trail.pop();
    state.set(path, 'done');
    return null;
  };
  for (const file of files) {
    const circle = visit(file.path);
    if (circle) return circle;
  }
  return null;
}
