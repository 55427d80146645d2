import type { Plugin } from 'vite';

/**
 * Takes the indentation out of the form's sources before they are built: minifiers leave template literals
 * alone, and much of the form is templates, where runs of white space mean nothing.
 */
export function trimTemplates(): Plugin {
  return {
    name: 'unitbook-trim-templates',
    apply: 'build',
    enforce: 'pre',
    transform(code, id) {
      if (!/[/\\]packages[/\\]form[/\\]src[/\\].+\.ts$/.test(id)) return null;
      return { code: code.replace(/\n\s+/g, '\n'), map: null };
    },
  };
}
