/** A part of a JSON text: what it is, where it stands and what it holds. */
export interface JsonNode {
  readonly type: 'object' | 'array' | 'property' | 'string' | 'number' | 'boolean' | 'null';
  readonly offset: number;
  readonly length: number;
  /** Of a string, number, boolean or null. */
  readonly value?: unknown;
  /** The properties of an object, the key and the value of a property, the items of an array. */
  readonly children?: JsonNode[];
}

/** Why a text is no JSON, in words, and where. */
export interface JsonProblem {
  readonly problem: string;
  readonly offset: number;
  /** Where the text is JSON, but larger than is read: what it can have at most. */
  readonly most?: string;
}

/**
 * Larger than any document of ours, and small enough that the slowest thing done with one takes less than
 * a second: the characters of a text, its values, the characters of one string or number, and brackets
 * within each other; what reads the parts afterwards calls itself once for each of those.
 */
export const DOCUMENT_LIMITS = {
  text: 4_000_000,
  values: 100_000,
  string: 10_000,
  number: 100,
  depth: 200,
} as const;

const SPACE = /[ \t\n\r]*/y;
/** A string up to its closing quotation mark, or to what cannot stand in one. */
const STRING = /"[ !#-[\]-\uffff]*(?:\\(?:["\\/bfnrt]|u[\dA-Fa-f]{4})[ !#-[\]-\uffff]*)*/y;
const WORD = /[\w.+-]*/y;
const LITERAL = /^(?:true|false|null|-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?)$/;

/** Thrown and caught within this file only. */
class NoJson extends Error implements JsonProblem {
  readonly problem: string;
  readonly offset: number;
  readonly most?: string;

  constructor(problem: string, offset: number, most?: string) {
    super(problem);
    this.problem = problem;
    this.offset = offset;
    if (most !== undefined) this.most = most;
  }
}

class Reader {
  private at = 0;
  private values = 0;
  private readonly text: string;

  constructor(text: string) {
    this.text = text;
  }

  document(): JsonNode {
    if (this.text.length > DOCUMENT_LIMITS.text) this.tooLarge('text', 'characters');
    if (this.next() === '') throw new NoJson('the file is empty', 0);
    const node = this.value(0);
    if (this.next() !== '') this.fail('end of file expected');
    return node;
  }

  private fail(problem: string): never {
    throw new NoJson(problem, this.at);
  }

  private tooLarge(limit: keyof typeof DOCUMENT_LIMITS, what: string): never {
    const most = String(DOCUMENT_LIMITS[limit]);
    throw new NoJson(`more than ${most} ${what}`, this.at, most);
  }

  private take(pattern: RegExp): string {
    pattern.lastIndex = this.at;
    const [found = ''] = pattern.exec(this.text) ?? [];
    this.at += found.length;
    return found;
  }

  /** The next character that is no space; '' at the end. */
  private next(): string {
    this.take(SPACE);
    return this.text.charAt(this.at);
  }

  private value(depth: number): JsonNode {
    const first = this.next();
    this.values += 1;
    if (this.values > DOCUMENT_LIMITS.values) this.tooLarge('values', 'values in one document');
    if (first === '{' || first === '[') return this.holder(first, depth);
    return first === '"' ? this.string() : this.literal();
  }

  private holder(first: '{' | '[', depth: number): JsonNode {
    if (depth === DOCUMENT_LIMITS.depth) this.tooLarge('depth', 'brackets within each other');
    const [type, end, wanted] =
      first === '{'
        ? (['object', '}', 'property name expected'] as const)
        : (['array', ']', 'value expected'] as const);
    const offset = this.at;
    const children: JsonNode[] = [];
    this.at += 1;
    let next = this.next();
    while (next !== end) {
      children.push(first === '{' ? this.property(depth + 1) : this.value(depth + 1));
      next = this.next();
      if (next === '') this.fail(`close ${first === '{' ? 'brace' : 'bracket'} expected`);
      if (next === end) break;
      if (next !== ',') this.fail('comma expected');
      this.at += 1;
      if (this.next() === end) this.fail(wanted);
    }
    this.at += 1;
    return { type, offset, length: this.at - offset, children };
  }

  private property(depth: number): JsonNode {
    const offset = this.at;
    if (this.next() !== '"') this.fail('property name expected');
    const key = this.string();
    if (this.next() !== ':') this.fail('colon expected');
    this.at += 1;
    const value = this.value(depth);
    return { type: 'property', offset, length: this.at - offset, children: [key, value] };
  }

  private string(): JsonNode {
    const offset = this.at;
    const raw = this.take(STRING);
    const stop = this.text.charAt(this.at);
    if (stop === '\\')
      this.fail(this.text.charAt(this.at + 1) === 'u' ? 'invalid unicode' : 'invalid escape character');
    if (stop !== '"') {
      if (stop === '' || stop === '\n' || stop === '\r') this.at = offset;
      this.fail(this.at === offset ? 'unexpected end of string' : 'invalid character');
    }
    // The first of them is the quotation mark.
    if (raw.length - 1 > DOCUMENT_LIMITS.string) {
      this.at = offset;
      this.tooLarge('string', 'characters in one text');
    }
    this.at += 1;
    return { type: 'string', offset, length: this.at - offset, value: JSON.parse(`${raw}"`) as string };
  }

  /** A number, true, false or null. */
  private literal(): JsonNode {
    const offset = this.at;
    const raw = this.take(WORD);
    if (!LITERAL.test(raw)) {
      this.at = offset;
      const isNumber = /^[-+.\d]/.test(raw);
      this.fail(raw === '' ? 'value expected' : isNumber ? 'invalid number format' : 'invalid symbol');
    }
    if (raw.length > DOCUMENT_LIMITS.number) {
      this.at = offset;
      this.tooLarge('number', 'characters in one number');
    }
    const value = JSON.parse(raw) as number | boolean | null;
    const type = value === null ? 'null' : typeof value === 'number' ? 'number' : 'boolean';
    return { type, offset, length: raw.length, value };
  }
}

/**
 * Read a JSON text into its parts, each with its place. Our own, for the size of the page: `JSON.parse`
 * keeps no places and a published parser that does (it stays as a witness in the tests) takes four times
 * as much. It takes exactly what `JSON.parse` takes, but for texts beyond `DOCUMENT_LIMITS`.
 *
 * @param text  the whole file
 * @returns     the outermost part, or the first problem and its place
 */
export function readJson(text: string): JsonNode | JsonProblem {
  try {
    return new Reader(text).document();
  } catch (error) {
    if (error instanceof NoJson) return error;
    throw error;
  }
}
