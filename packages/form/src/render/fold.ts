import { html, type TemplateResult } from 'lit';
import type { Desk } from './desk.ts';

/** What remembers which folds are open. */
export type Folds = Pick<Desk, 'isOpen' | 'setOpen'>;

/** What folds away, and what stands for it. */
export interface Fold {
  /** Names its place on the page, so that it stays as the reader left it from month to month. */
  readonly key: string;
  readonly className?: string;
  /** Whether it is open before the reader touched it. */
  readonly isOpen?: boolean;
  readonly summary: TemplateResult | string;
  /** Made at each drawing, so what is costly looks whether it is seen at all. */
  readonly content: (isOpen: boolean) => unknown;
}

/** A disclosure that stays as the reader left it. */
export function renderFold({ key, className, isOpen, summary, content }: Fold, desk: Folds): TemplateResult {
  const isShown = desk.isOpen(key, isOpen === true);
  return html`<details
    class=${className ?? ''}
    ?open=${isShown}
    @toggle=${(event: Event) => {
      desk.setOpen(key, (event.currentTarget as HTMLDetailsElement).open);
    }}
  >
    <summary>${summary}</summary>
    ${content(isShown)}
  </details>`;
}
