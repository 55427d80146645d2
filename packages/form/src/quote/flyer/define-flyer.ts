import { UnitbookFlyer } from './unitbook-flyer.ts';

/** Define `<unitbook-flyer>`, unless another copy on the page was first: a name can be taken only once. */
export function defineFlyer(): void {
  if (customElements.get('unitbook-flyer') === undefined)
    customElements.define('unitbook-flyer', UnitbookFlyer);
}
