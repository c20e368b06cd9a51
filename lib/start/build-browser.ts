// Bundles what browsers fetch: the board module, the style sheets, the fonts that these name. Every
// file carries a hash of its content in its name and may be kept for a year; the manifest names them.

import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { build, type Metafile } from 'esbuild';
import { buildOnce } from './inner/build-stamp.ts';

const OUTPUT = 'public/built';
const ENTRIES: Readonly<Record<string, string>> = {
  'board.js': 'app/_ui/board/tailpiece-board.ts',
  'public.css': 'app/_ui/styles/public.css',
  'desk.css': 'app/_ui/styles/desk.css',
};

/** Builds `public/built/NAME.HASH.*` and its manifest; false where they were already up to date. */
export function buildBrowser(root: string): Promise<boolean> {
  const entries = Object.entries(ENTRIES).filter(([, file]) => existsSync(join(root, file)));
  const files = ['lib/start/build-browser.ts', 'package-lock.json', ...inputFiles(root)];
  const outputs = [join(OUTPUT, 'manifest.json')];
  return buildOnce({ root, name: 'browser', files, outputs }, async () => {
    mkdirSync(join(root, OUTPUT), { recursive: true });
    const result = await build({
      absWorkingDir: root,
      entryPoints: entries.map(([name, file]) => ({ in: file, out: name.replace(/\.[a-z]+$/, '') })),
      entryNames: '[name].[hash]',
      assetNames: '[name].[hash]',
      outdir: OUTPUT,
      bundle: true,
      minify: true,
      format: 'esm',
      target: ['es2022', 'chrome108', 'firefox110', 'safari16.4'],
      loader: { '.woff2': 'file' },
      legalComments: 'none',
      metafile: true,
      logLevel: 'error',
    });
    const manifest = Object.fromEntries(
      entries.map(([name, file]) => [name, builtName(result.metafile, file)]),
    );
    const fonts = Object.keys(result.metafile.outputs).filter((file) => file.endsWith('.woff2'));
    for (const file of fonts) manifest[fontName(file)] = file.slice(OUTPUT.length + 1);
    writeFileSync(join(root, OUTPUT, 'manifest.json'), `${JSON.stringify(manifest, null, 2)}\n`);
    dropOldFiles(root, Object.values(manifest));
  });
}

// Pages that a cache still holds, and a web process that has not been restarted, name the files of the build before.
const KEPT_MS = 7 * 24 * 60 * 60 * 1000;

function dropOldFiles(root: string, current: readonly string[]): void {
  for (const file of readdirSync(join(root, OUTPUT))) {
    const path = join(root, OUTPUT, file);
    const isOld = Date.now() - statSync(path).mtimeMs > KEPT_MS;
    if (isOld && !current.includes(file) && file !== 'manifest.json') rmSync(path);
  }
}

function inputFiles(root: string): string[] {
  return ['app/_ui/board', 'app/_ui/styles', 'lib/rules', 'lib/pictures', 'lib/kit'].flatMap((folder) =>
    readdirSync(join(root, folder), { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => join(entry.parentPath, entry.name).slice(root.length + 1)),
  );
}

function builtName(metafile: Metafile, entry: string): string {
  const found = Object.entries(metafile.outputs).find(([, output]) => output.entryPoint === entry);
  if (found === undefined) throw new Error(`Nothing was built from ${entry}`);
  return found[0].slice(OUTPUT.length + 1);
}

/** `literata-latin-wght-normal.woff2` for `public/built/literata-latin-wght-normal.ABC123.woff2`. */
function fontName(file: string): string {
  return file.slice(OUTPUT.length + 1).replace(/\.[A-Z0-9]+\.woff2$/, '.woff2');
}

/** The manifest, for tests and the start script. */
export function readManifest(root: string): Readonly<Record<string, string>> {
  return JSON.parse(readFileSync(join(root, OUTPUT, 'manifest.json'), 'utf8'));
}
