import { casesJsonSchema, disputeJsonSchema, tariffJsonSchema } from '@unitbook/engine';

/** A list of plain values over several lines. */
const SHORT_LIST = /^( *(?:"[^"]+": )?)\[\n((?: *(?:"[^"]*"|true|false),?\n)+) *\](,?)$/gm;

/** The JSON Schemas of documents, by the name of their file. */
const SCHEMAS = { tariff: tariffJsonSchema, cases: casesJsonSchema, dispute: disputeJsonSchema } as const;

/** A document that has a schema of its own beside the source. */
export type SchemaName = keyof typeof SCHEMAS;

/** The JSON Schema of a document as its file has it: short lists on one line, as the formatter does. */
export function schemaText(name: SchemaName): string {
  const text = JSON.stringify(SCHEMAS[name](), null, 2);
  const short = text.replace(SHORT_LIST, (long, before: string, items: string, after: string) => {
    const line = `${before}[${items.trim().replace(/,\n */g, ', ')}]${after}`;
    return line.length <= 110 ? line : long;
  });
  return `${short}\n`;
}
