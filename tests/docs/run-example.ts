import { readFileSync } from 'node:fs';
import { createContext, runInContext } from 'node:vm';
import * as engine from '@unitbook/engine';
import * as meterFiles from '@unitbook/meter-files';
import ts from 'typescript';
import type { Block } from './pages.ts';

const ROOT = new URL('../../', import.meta.url);

/** What a page's examples can import: the engine, the readers of meter files, and the examples of the repository. */
const MODULES: Readonly<Record<string, unknown>> = {
  '@unitbook/engine': engine,
  '@unitbook/meter-files': meterFiles,
  'node:fs': {
    readFileSync: (path: string) => {
      if (!path.startsWith('tariffs-examples/')) throw new RangeError(`${path} is no example`);
      return readFileSync(new URL(path, ROOT), 'utf8');
    },
  },
};

/** A line of an example with the value it has, and the value it should have. */
export interface Shown {
  readonly line: number;
  readonly code: string;
  readonly expected: string;
  readonly value: string;
}

const VALUE = /^(.*?);? *\/\/=> (.*)$/;

function written(value: unknown): string {
  if (typeof value === 'bigint') return `${String(value)}n`;
  return value === undefined ? 'undefined' : JSON.stringify(value);
}

/** The lines of all blocks as one module: later examples go on from earlier ones. */
function moduleOf(blocks: readonly Block[]) {
  const shown: { line: number; code: string; expected: string }[] = [];
  const lines = blocks.flatMap((block) =>
    block.text.split('\n').map((text, index) => {
      const [, code, expected] = VALUE.exec(text) ?? [];
      if (code === undefined || expected === undefined) return text;
      shown.push({ line: block.line + 1 + index, code: code.trim(), expected: expected.trim() });
      return `show(${code});`;
    }),
  );
  return { source: lines.join('\n'), shown };
}

/** Run the TypeScript examples of a page, one after the other. */
export function runExamples(blocks: readonly Block[]): readonly Shown[] {
  const { source, shown } = moduleOf(blocks);
  const compilerOptions = { module: ts.ModuleKind.CommonJS, target: ts.ScriptTarget.ES2022 };
  const { outputText } = ts.transpileModule(source, { compilerOptions });
  const values: string[] = [];
  const show = (value: unknown): void => void values.push(written(value));
  const require = (name: string): unknown => MODULES[name];
  runInContext(outputText, createContext({ show, require, exports: {}, TextEncoder }));
  return shown.map((one, index) => ({ ...one, value: values[index] ?? 'nothing' }));
}
