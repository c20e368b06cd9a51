// Compiles the engine's kernel from its source into a module that carries it as text: no path has
// to be found at run time, in tests, web server or threads, and no binary is trusted from the tree.

import { createHash } from 'node:crypto';
import { mkdirSync, readdirSync, renameSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { buildOnce } from './inner/build-stamp.ts';

const SOURCE = 'lib/engine/kernel';
const PARTS = [
  {
    entry: 'kernel.ts',
    output: 'lib/engine/inner/kernel-wasm.ts',
    name: 'KERNEL_WASM_BASE64',
    hash: 'KERNEL_HASH',
  },
  {
    entry: 'tables/entry.ts',
    output: 'lib/engine/inner/tables-wasm.ts',
    name: 'TABLES_WASM',
    hash: 'TABLES_HASH',
  },
] as const;
// The first two MiB are laid out by hand (kernel/layout.ts): the compiler's constants lie above.
const OPTIONS = '-O3 --noAssert --converge --runtime stub --memoryBase 2097152 --initialMemory 34'.split(' ');

/** Writes the kernel modules into the engine room; false where they were already up to date. */
export function buildKernel(root: string): Promise<boolean> {
  const files = readdirSync(join(root, SOURCE), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts'))
    .map((name) => `${SOURCE}/${name.replaceAll('\\', '/')}`);
  files.push('lib/start/build-kernel.ts', 'node_modules/assemblyscript/package.json');
  const outputs = PARTS.map(({ output }) => output);
  return buildOnce({ root, name: 'kernel', files, outputs }, async () => {
    for (const part of PARTS) {
      const target = join(root, part.output);
      mkdirSync(dirname(target), { recursive: true });
      // Two builds at once must never leave half a file to a reader.
      const draft = `${target}.${process.pid}.draft`;
      writeFileSync(draft, moduleText(part, await compile(root, part.entry)));
      renameSync(draft, target);
    }
  });
}

async function compile(root: string, entry: string): Promise<Uint8Array> {
  const { main } = await import('assemblyscript/asc');
  let wasm: Uint8Array | null = null;
  let said = '';
  const { error } = await main([`${SOURCE}/${entry}`, '--baseDir', root, '-o', 'kernel.wasm', ...OPTIONS], {
    stdout: { write: () => true },
    stderr: {
      write: (text: string | Uint8Array) => {
        said += String(text);
        return true;
      },
    },
    writeFile: (_name: string, bytes: string | Uint8Array) => {
      if (typeof bytes !== 'string') wasm = bytes;
    },
  });
  if (error || !wasm) throw new Error(`The kernel does not compile:\n${said}${error?.message ?? ''}`);
  return wasm;
}

function moduleText(part: (typeof PARTS)[number], wasm: Uint8Array): string {
  const hash = createHash('sha256').update(wasm).digest('hex').slice(0, 8);
  return [
    `// Made by lib/start/build-kernel.ts from ${SOURCE}.`,
    `export const ${part.hash} = '${hash}';`,
    `export const ${part.name} =\n  '${Buffer.from(wasm).toString('base64')}';`,
    '',
  ].join('\n');
}
