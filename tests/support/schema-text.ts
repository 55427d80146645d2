import { tariffJsonSchema } from '@unitbook/engine';

/** A list of plain values over several lines. */
const SHORT_LIST = /^( *(?:"[^"]+": )?)\[\n((?: *(?:"[^"]*"|true|false),?\n)+) *\](,?)$/gm;

/** The JSON Schema of a tariff document as its file has it: short lists on one line, as the formatter does. */
export function schemaText(): string {
  const text = JSON.stringify(tariffJsonSchema(), null, 2);
  const short = text.replace(SHORT_LIST, (long, before: string, items: string, after: string) => {
    const line = `${before}[${items.trim().replace(/,\n */g, ', ')}]${after}`;
    return line.length <= 110 ? line : long;
  });
  return `${short}\n`;
}
