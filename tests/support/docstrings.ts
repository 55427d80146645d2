import ts from 'typescript';

/** An exported function and what its docstring says; null where it has none. */
export interface DocumentedFunction {
  readonly name: string;
  readonly docstring: string | null;
}

const isExported = (node: ts.HasModifiers): boolean =>
  ts.getModifiers(node)?.some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword) ?? false;

/** Whether a variable holds a function: by its type, or by what is assigned to it. */
function holdsFunction({ type, initializer }: ts.VariableDeclaration): boolean {
  return (
    (type !== undefined && ts.isFunctionTypeNode(type)) ||
    (initializer !== undefined && (ts.isArrowFunction(initializer) || ts.isFunctionExpression(initializer)))
  );
}

function namesOf(statement: ts.Statement): readonly string[] {
  if (ts.isFunctionDeclaration(statement)) {
    return isExported(statement) && statement.name !== undefined ? [statement.name.text] : [];
  }
  if (!ts.isVariableStatement(statement) || !isExported(statement)) return [];
  return statement.declarationList.declarations.filter(holdsFunction).map(({ name }) => name.getText());
}

/** The comment before a statement without its stars. */
function docstringOf(statement: ts.Statement, text: string): string | null {
  const comments = ts.getLeadingCommentRanges(text, statement.getFullStart()) ?? [];
  const last = comments.map(({ pos, end }) => text.slice(pos, end)).at(-1);
  if (last?.startsWith('/**') !== true) return null;
  return last
    .slice(3, -2)
    .replace(/^\s*\* ?/gm, '')
    .trim();
}

/** The exported functions of a source file, each with its docstring. */
export function documentedFunctions(text: string): readonly DocumentedFunction[] {
  const file = ts.createSourceFile('source.ts', text, ts.ScriptTarget.ES2022, true);
  return file.statements.flatMap((statement) =>
    namesOf(statement).map((name) => ({ name, docstring: docstringOf(statement, text) })),
  );
}

/** An example of a docstring: statements that set it up, and expressions with the value they have. */
export interface Example {
  readonly code: string;
  readonly values: readonly string[];
}

const VALUE = /^(.*?);?\s*\/\/=>\s*(.+)$/;

/** Make an example a program that keeps what each line with a value comes to. */
function exampleOf(block: string): Example {
  const lines = block.split('\n').map((line) => line.trim());
  const code = lines.map((line) => {
    const [, expression] = VALUE.exec(line) ?? [];
    return expression === undefined ? line : `results.push(${expression});`;
  });
  return {
    code: code.join('\n'),
    values: lines.flatMap((line) => VALUE.exec(line)?.[2]?.trim() ?? []),
  };
}

/** The examples of a docstring: what follows `@example` up to the next tag. */
export function examplesOf(docstring: string): readonly Example[] {
  return docstring
    .split(/^(?=@\w+)/m)
    .filter((block) => block.startsWith('@example'))
    .map((block) => exampleOf(block.slice('@example'.length).trim()));
}
