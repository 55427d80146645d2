import { UnitbookPromise } from './unitbook-promise.ts';

/** Define `<unitbook-promise>`, unless another copy on the page was first: a name can be taken only once. */
export function definePromise(): void {
  if (customElements.get('unitbook-promise') === undefined)
    customElements.define('unitbook-promise', UnitbookPromise);
}
