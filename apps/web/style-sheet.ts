import { runnerImport, type Plugin } from 'vite';

/** A style sheet without the white space that means nothing; ours hold no text in which it would. */
function trimStyles(text: string): string {
  return text
    .replace(/\s+/g, ' ')
    .replace(/ ?([{};,>]) ?/g, '$1')
    .replace(/: /g, ':')
    .replace(/;}/g, '}')
    .trim();
}

const MODULE = /[/\\]packages[/\\]form[/\\]src[/\\]styles[/\\]book\.ts$/;
/** A name of its own: the page has a style sheet besides, which a browser fetches by itself. */
const NAME = 'form-styles';
const ASSET = new RegExp(String.raw`${NAME}-[\w-]+\.css$`);

/**
 * Ships the form's styles as a style sheet of their own, not within the script: the package carries them as
 * text, so that it needs no bundler; the page fetches them beside the script, and a browser has less to compile.
 */
export function styleSheet(): Plugin {
  return {
    name: 'unitbook-style-sheet',
    apply: 'build',
    enforce: 'pre',
    async load(id) {
      if (!MODULE.test(id)) return null;
      const { module } = await runnerImport<{ bookStyles: string }>(id);
      const source = trimStyles(module.bookStyles);
      const reference = this.emitFile({ type: 'asset', name: `${NAME}.css`, source });
      // Without its styles the page is plain, and works.
      const address = `import.meta.ROLLUP_FILE_URL_${reference}`;
      return `export const bookStyles = await fetch(${address}).then((r) => r.ok ? r.text() : '', () => '');`;
    },
    transformIndexHtml: {
      order: 'post',
      handler: (_, { bundle = {} }) =>
        Object.keys(bundle)
          .filter((name) => ASSET.test(name))
          .map((name) => ({
            tag: 'link',
            attrs: { rel: 'preload', as: 'fetch', crossorigin: 'anonymous', href: `./${name}` },
            injectTo: 'head',
          })),
    },
  };
}
