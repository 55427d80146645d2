import type { Plugin } from 'vite';

/** Elements that stand on lines of their own: white space beside their tags is never seen. */
const BLOCK =
  '(?:div|p|ul|ol|li|dl|dt|dd|h2|h3|section|details|summary|table|caption|thead|tbody|tr|th|td|fieldset|legend|select|option)';
const BEFORE = new RegExp(String.raw`\s+(?=</?${BLOCK}\b)`, 'g');
const COMMENT = /^\s*\/\/.*$/gm;
const AFTER = new RegExp(String.raw`(<${BLOCK}(?: [\w-]+="[^"<>$]*")*>|</${BLOCK}>)\s+`, 'g');

/**
 * Takes the indentation out of the form's sources before they are built: minifiers leave template literals
 * alone, and much of the form is templates, where runs of white space mean nothing. It relies on the
 * formatter's semicolons, and on comments standing on lines of their own: others end in a failed build.
 */
export function trimTemplates(): Plugin {
  return {
    name: 'unitbook-trim-templates',
    apply: 'build',
    enforce: 'pre',
    transform(code, id) {
      if (!/[/\\]packages[/\\]form[/\\]src[/\\].+\.ts$/.test(id)) return null;
      const lines = code.replace(COMMENT, '').replace(/\s+/g, ' ');
      return { code: lines.replace(BEFORE, '').replace(AFTER, '$1'), map: null };
    },
  };
}
