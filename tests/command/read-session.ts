/** One command of a session, with everything around it. */
interface SessionStep {
  readonly line: number;
  readonly words: readonly string[];
  readonly input: string;
  readonly output: string;
  /** Whether the output only has to hold these lines, one after the other. */
  readonly isPart: boolean;
  readonly messages: string;
  readonly status: number;
}

/** A file of a session: its text or bytes, or only its size. */
export type SessionFile = { readonly bytes: Uint8Array } | { readonly size: number };

/** A Markdown file that shows commands and what they print. */
export interface Session {
  readonly files: ReadonlyMap<string, SessionFile>;
  readonly steps: readonly SessionStep[];
}

interface Block {
  readonly line: number;
  readonly words: readonly string[];
  readonly text: string;
}

const FENCE = /^```(.*)\n([^]*?)^```$|^Exit status: (\d)$/gm;

function blocks(markdown: string): Block[] {
  return [...markdown.matchAll(FENCE)].map((match) => ({
    line: markdown.slice(0, match.index).split('\n').length,
    words: match[3] === undefined ? (match[1] ?? '').trim().split(' ') : ['status'],
    text: match[3] ?? match[2] ?? '',
  }));
}

/** `file NAME`, `file NAME hex` (bytes) or `file NAME 50 MB` (a size and no content). */
function readFile({ words: [, , form, unit], text }: Block): SessionFile {
  if (unit === 'MB') return { size: Number.parseInt(form ?? '', 10) * 1024 * 1024 };
  if (form === 'hex') return { bytes: Buffer.from(text.replace(/\s/g, ''), 'hex') };
  return { bytes: Buffer.from(text) };
}

function begin({ line, text }: Block, input: string): SessionStep {
  const [prompt, name, ...words] = text.trim().split(/\s+/);
  if (prompt !== '$' || name !== 'unitbook') throw new Error(`Line ${String(line)}: not a command of ours`);
  return { line, words, input, output: '', isPart: false, messages: '', status: -1 };
}

/**
 * Read a session: blocks named `file NAME`, `input` (for the next command), `console` (the command),
 * `output` (or `output part`) and `messages`, and then a line such as "Exit status: 0". A block that is
 * left out is empty.
 */
export function readSession(markdown: string): Session {
  const files = new Map<string, SessionFile>();
  const steps: SessionStep[] = [];
  let input = '';
  const change = (block: Block, changes: Partial<SessionStep>): void => {
    const step = steps.at(-1);
    if (step === undefined) throw new Error(`Line ${String(block.line)}: no command before it`);
    steps[steps.length - 1] = { ...step, ...changes };
  };
  for (const block of blocks(markdown)) {
    const [kind, name] = block.words;
    if (kind === 'file') files.set(name ?? '', readFile(block));
    else if (kind === 'input') input = block.text;
    else if (kind === 'console') {
      steps.push(begin(block, input));
      input = '';
    } else if (kind === 'output') change(block, { output: block.text, isPart: name === 'part' });
    else if (kind === 'messages') change(block, { messages: block.text });
    else if (kind === 'status') change(block, { status: Number.parseInt(block.text, 10) });
    else throw new Error(`Line ${String(block.line)}: an unknown block, ${block.words.join(' ')}`);
  }
  return { files, steps };
}
