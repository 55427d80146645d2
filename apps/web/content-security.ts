import type { Plugin } from 'vite';

const directives = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self'",
  "font-src 'self'",
  "connect-src 'self'",
  "manifest-src 'self'",
  "worker-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "require-trusted-types-for 'script'",
  'trusted-types lit-html unitbook-worker default',
];

/** `frame-ancestors` counts only as a header: browsers refuse it in a meta tag. */
export const headers = {
  'Content-Security-Policy': [...directives, "frame-ancestors 'none'"].join('; '),
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
};

/** Writes the policy into the built page, so that it holds on a host that sends no headers of ours. */
export function contentSecurity(): Plugin {
  return {
    name: 'unitbook-content-security',
    apply: 'build',
    transformIndexHtml: () => [
      {
        tag: 'meta',
        attrs: { 'http-equiv': 'Content-Security-Policy', content: directives.join('; ') },
        injectTo: 'head-prepend',
      },
    ],
  };
}
